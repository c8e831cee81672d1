using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.Lots;

namespace LibraryDesk.Web.Tests.SeedPages;

public class AmountEntryTests
{
    [Theory]
    [InlineData("12.5", 12_500)]
    [InlineData("12,5", 12_500)]
    [InlineData(" 18 ", 18_000)]
    [InlineData("0.001", 1)]
    public void Grams_are_read_with_a_point_or_a_comma(string typed, long milligrams) =>
        Assert.Equal(milligrams, AmountEntry.Read(typed, AmountEntry.Grams).Match(quantity => quantity.Amount, _ => -1));

    [Theory]
    [InlineData("", AmountEntry.Seeds)]
    [InlineData("12.5", AmountEntry.Seeds)]
    [InlineData("-3", AmountEntry.Seeds)]
    [InlineData("many", AmountEntry.Grams)]
    [InlineData("-1", AmountEntry.Grams)]
    [InlineData("99999999999999999999", AmountEntry.Seeds)]
    [InlineData("9999999999999999", AmountEntry.Grams)]
    public void What_is_no_amount_is_refused(string typed, string unit) => Assert.Equal(AmountEntry.Code, AmountEntry.Read(typed, unit).Refusal?.Code);

    [Fact]
    public void Seeds_are_whole() => Assert.Equal(SeedUnit.Seeds, AmountEntry.Read("200", AmountEntry.Seeds).Match(quantity => quantity.Unit, _ => SeedUnit.Milligrams));
}
