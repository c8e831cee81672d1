using LibraryDesk.Desk.Seeds.Search;

namespace LibraryDesk.Desk.Tests.Seeds;

public sealed class SearchTextTests
{
    [Theory]
    [InlineData("Ferryman's Lamp", "ferrymans lamp")]
    [InlineData("Straße  nach—Łódź", "strasse nach lodz")]
    [InlineData("Crème Brûlée, No 2", "creme brulee no 2")]
    public void Words_are_made_plain(string text, string words) => Assert.Equal(words.Split(' '), SearchText.Words(text));

    // Distances worked by hand; a swap of neighbours counts once (Damerau 1964), unlike in Levenshtein 1966.
    [Theory]
    [InlineData("lamp", "lmap", 1)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("red", "red", 0)]
    [InlineData("ca", "abc", 3)]
    public void Slips_are_counted(string one, string other, int slips) => Assert.Equal(slips, SearchText.Slips(one, other, 5));

    // As the pg_trgm manual pads: two blanks before, one after.
    [Fact]
    public void Trigrams_are_padded() => Assert.Equal(["  c", " ca", "cat", "at "], SearchText.Trigrams("cat"));
}
