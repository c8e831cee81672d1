using LibraryDesk.Desk.Words;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Tests.Shared;

public class OddsWordsTests
{
    [Theory]
    [InlineData(0.846, "84.6\u00a0%")]
    [InlineData(0.0004, "under 0.1\u00a0%")]
    [InlineData(0, "0.0\u00a0%")]
    [InlineData(0.9999, "over 99.9\u00a0%")]
    public void Exact_figures_have_one_decimal_and_never_round_to_certainty(double share, string words) =>
        Assert.Equal(words, OddsWords.Percent(share));

    [Fact]
    public void Figures_and_words_are_those_of_the_readers_language()
    {
        using var _ = Languages.Speak("es");
        Assert.Equal("84,6\u00a0%", OddsWords.Percent(0.846));
        Assert.Equal("17 de 20", OddsWords.For(17));
        Assert.Equal("más de 19 de 20", OddsWords.For(20));
        Assert.Equal("menos de 1 de 20", OddsWords.For(0));
    }
}
