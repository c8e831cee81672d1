using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>Names that fit all words, best first.</summary>
/// <param name="Ranked">Their numbers, with how well each fits; when there are too many, none.</param>
/// <param name="AreTooMany">True when there are more than could be ranked.</param>
internal sealed record NameHits(IReadOnlyList<(long Id, int Fit)> Ranked, bool AreTooMany);

/// <summary>Finds names by their words.</summary>
internal sealed class NameSearch(LibraryDbContext db, IReadOnlyList<MatchedWord> words, CancellationToken stop)
{
    private IQueryable<SearchPostingRow> Postings => db.Set<SearchPostingRow>().Where(row => row.Kind == SearchIndex.Names);

    public async Task<NameHits> FindAsync(int most)
    {
        if (words.Count == 0) return new([], false);
        var refs = await RefsAsync(most + 1);
        if (refs.Count > most) return new([], true);
        var all = words.SelectMany(word => word.InUse).Distinct().ToArray();
        var hits = (await Postings.Where(row => refs.Contains(row.Ref) && all.Contains(row.Word)).Select(row => new { row.Ref, row.Word, row.Weight }).ToListAsync(stop)).ToLookup(row => row.Ref);

        // The word as typed counts twice: "red" before "redcurrant".
        return new([.. refs
            .Select(id => (Id: id, Fit: words.Sum(word => hits[id].Where(hit => word.InUse.Contains(hit.Word)).Select(hit => hit.Weight * (hit.Word == word.Word.Typed ? 2 : 1)).DefaultIfEmpty().Max())))
            .OrderByDescending(name => name.Fit).ThenByDescending(name => name.Id)], false);
    }

    public async Task<IReadOnlyList<FoundName>> ShowAsync(NameHits hits, int most)
    {
        var ids = hits.AreTooMany ? await OfNameAsync(most) : [.. hits.Ranked.Take(most).Select(name => name.Id)];
        var rows = await db.Set<SearchNameRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToDictionaryAsync(row => row.Id, stop);
        var normalized = rows.Values.Select(row => row.NormalizedName).Where(name => name.Length > 0).Distinct().ToArray();
        var records = (await db.Set<VarietyRow>().Where(row => normalized.Contains(row.NormalizedName)).Select(row => new { row.Id, row.Species, row.NormalizedName }).ToListAsync(stop)).ToDictionary(row => (row.Species, row.NormalizedName), row => row.Id);
        return [.. ids.Where(rows.ContainsKey).Select(id => rows[id]).Where(row => row.Display.Length + row.Species.Length > 0)
            .Select(row => new FoundName(row.Display, row.Species, records.TryGetValue((row.Species, row.NormalizedName), out var record) ? record : null))];
    }

    // The word that stands in the fewest names leads; the others are looked up for its names only.
    private async Task<IReadOnlyList<long>> RefsAsync(int most)
    {
        var lead = 0;
        if (words.Count > 1)
        {
            var counts = new List<int>();
            foreach (var word in words)
            {
                var inUse = word.InUse;
                counts.Add(await Postings.Where(row => inUse.Contains(row.Word)).Take(4 * most).CountAsync(stop));
            }

            lead = counts.IndexOf(counts.Min());
        }

        var first = words[lead].InUse;
        var refs = Postings.Where(row => first.Contains(row.Word)).Select(row => row.Ref);
        foreach (var word in words.Where((_, place) => place != lead))
        {
            var also = word.InUse;
            refs = refs.Where(of => Postings.Any(row => row.Ref == of && also.Contains(row.Word)));
        }

        return await refs.Distinct().OrderByDescending(of => of).Take(most).ToListAsync(stop);
    }

    private async Task<IReadOnlyList<long>> OfNameAsync(int most)
    {
        var first = words[0].InUse;
        var refs = Postings.Where(row => first.Contains(row.Word) && row.Weight >= NameWords.OfSynonym).Select(row => row.Ref);
        foreach (var word in words.Skip(1))
        {
            var also = word.InUse;
            refs = refs.Where(of => Postings.Any(row => row.Ref == of && also.Contains(row.Word)));
        }

        return await refs.Distinct().OrderByDescending(of => of).Take(most).ToListAsync(stop);
    }
}
