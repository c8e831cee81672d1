using System.Globalization;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>What was asked for, read as words.</summary>
/// <param name="Words">The words typed, without years, and the words in use that each may stand for.</param>
/// <param name="Year">The season to narrow to; null for any.</param>
internal sealed record AskedWords(IReadOnlyList<MatchedWord> Words, int? Year)
{
    private const int MostWords = 8;

    /// <summary>The words that stand for any in use; the others narrow nothing.</summary>
    public IReadOnlyList<MatchedWord> Used { get; } = [.. Words.Where(word => word.InUse.Count > 0)];

    /// <summary>True when nothing can be found by it.</summary>
    public bool FindNothing => Used.Count == 0 && Year is null;

    /// <summary>Reads them.</summary>
    /// <param name="db">The library.</param>
    /// <param name="typed">As typed.</param>
    /// <param name="kinds">Whose words count: <see cref="SearchIndex.Names"/>, <see cref="SearchIndex.Donors"/>.</param>
    /// <param name="stop">Stops.</param>
    public static async Task<AskedWords> ReadAsync(LibraryDbContext db, string typed, IReadOnlyList<string> kinds, CancellationToken stop)
    {
        var words = SearchText.Words(typed).Take(MostWords).ToArray();
        var matcher = new WordMatcher(db, kinds, stop);
        var matched = new List<MatchedWord>();
        foreach (var word in words.Where(word => YearOf(word) is null)) matched.Add(await matcher.MatchAsync(word));
        return new(matched, words.Select(YearOf).FirstOrDefault(year => year is not null));
    }

    private static int? YearOf(string word) => word.Length == 4 && int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year is >= 1900 and <= 2100 ? year : null;
}
