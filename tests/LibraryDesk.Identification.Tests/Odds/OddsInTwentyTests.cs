using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Tests.Odds;

public sealed class OddsInTwentyTests
{
    [Theory]
    [InlineData(new[] { 0.85, 0.10, 0.05 }, new[] { 17, 2, 1 })]
    [InlineData(new[] { 0.35, 0.35, 0.30 }, new[] { 7, 7, 6 })]
    [InlineData(new[] { 0.5, 0.3, 0.12, 0.04, 0.04 }, new[] { 10, 6, 2, 1, 1 })]
    [InlineData(new[] { 1.0 / 3, 1.0 / 3, 1.0 / 3 }, new[] { 7, 7, 6 })]
    [InlineData(new[] { 0.96, 0.04 }, new[] { 19, 1 })]
    public void Twenty_seeds_are_shared_by_largest_remainder(double[] probabilities, int[] seeds) =>
        Assert.Equal(seeds, OddsInTwenty.Share(probabilities).Select(o => o.Seeds));

    [Fact]
    public void Nothing_is_twenty_in_twenty_while_undetermined()
    {
        var odds = OddsInTwenty.Share([0.999, 0.001]);
        Assert.Equal(19, odds[0].Seeds);
        Assert.Equal("more than 19 in 20", odds[0].ToString());
        Assert.Equal("under 1 in 20", odds[1].ToString());
    }

    [Fact]
    public void Nineteen_by_right_is_just_nineteen() => Assert.Equal("19 in 20", OddsInTwenty.Share([0.95, 0.05])[0].ToString());
}
