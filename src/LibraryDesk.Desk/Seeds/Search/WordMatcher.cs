using LibraryDesk.Data.Search;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>A typed word with the words in use that it may stand for.</summary>
internal sealed record MatchedWord(SearchedWord Word, IReadOnlyList<string> InUse);

/// <summary>Finds the words in use for a typed one: itself, longer ones that begin like it, else those a slip or two away.</summary>
internal sealed class WordMatcher(LibraryDbContext db, IReadOnlyList<string> kinds, CancellationToken stop)
{
    private const int MostLonger = 10;
    private const int MostNear = 5;
    private const int MostLookedAt = 40;

    public async Task<MatchedWord> MatchAsync(string typed)
    {
        var begin = await BeginningAsync(typed);
        if (begin.Count > 0) return new(new(typed, begin.Contains(typed) ? typed : begin[0]) { }, begin);
        var near = await NearAsync(typed);
        return new(new(typed, near.Count > 0 ? near[0] : null), near);
    }

    // The trigram of a word's start narrows to words with the same first letters; the range to those that go on like it.
    private async Task<IReadOnlyList<string>> BeginningAsync(string typed)
    {
        if (typed.Length < 2) return await InUseAsync([typed]);
        var start = "  " + typed[0];
        var second = " " + typed[..2];
        var end = typed + '\uffff';
#pragma warning disable CA1309, CA1310 // Translated to the database's own comparison, which is letter by letter for these columns.
        var longer = await db.Set<SearchTrigramRow>().Where(row => (row.Trigram == start || row.Trigram == second) && row.Word.CompareTo(typed) >= 0 && row.Word.CompareTo(end) < 0)
            .Select(row => row.Word).Distinct().OrderBy(word => word).Take(MostLookedAt).ToListAsync(stop);
#pragma warning restore CA1309, CA1310
        return [.. (await InUseAsync(longer)).OrderBy(word => word.Length).ThenBy(word => word, StringComparer.Ordinal).Take(MostLonger)];
    }

    private async Task<IReadOnlyList<string>> NearAsync(string typed)
    {
        var most = SearchText.Forgiven(typed);
        if (most == 0) return [];
        var trigrams = SearchText.Trigrams(typed);
        var looked = await db.Set<SearchTrigramRow>().Where(row => trigrams.Contains(row.Trigram)).GroupBy(row => row.Word)
            .OrderByDescending(word => word.Count()).ThenBy(word => word.Key).Take(MostLookedAt).Select(word => word.Key).ToListAsync(stop);
        var near = looked.Select(word => (Word: word, Slips: SearchText.Slips(typed, word, most))).Where(word => word.Slips <= most).OrderBy(word => word.Slips).ThenBy(word => word.Word, StringComparer.Ordinal).ToArray();
        var inUse = (await InUseAsync([.. near.Select(word => word.Word)])).ToHashSet(StringComparer.Ordinal);
        return [.. near.Select(word => word.Word).Where(inUse.Contains).Take(MostNear)];
    }

    // A word that only a donor's name has must not show to readers who do not see people.
    private async Task<IReadOnlyList<string>> InUseAsync(List<string> words) =>
        words.Count == 0 ? [] : await db.Set<SearchPostingRow>().Where(row => words.Contains(row.Word) && kinds.Contains(row.Kind)).Select(row => row.Word).Distinct().ToListAsync(stop);
}
