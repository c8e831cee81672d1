using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>Lots that were found.</summary>
internal sealed record LotHits(IReadOnlyList<long> Ids, IReadOnlyDictionary<long, GoesBy> Names, IReadOnlyList<FoundLot> Shown);

/// <summary>Finds the lots of names, and of a season.</summary>
internal sealed class LotSearch(LibraryDbContext db, IReadOnlyList<MatchedWord> words, int? year, CancellationToken stop)
{
    public async Task<(LotHits Hits, bool More)> FindAsync(NameHits names, int most)
    {
        var ids = words.Count == 0 || names.AreTooMany ? await NewestAsync(most + 1) : await OfNamesAsync(names, most + 1);
        var kept = ids.Take(most).ToArray();
        var rows = await db.Set<LotRow>().AsNoTracking().Where(row => kept.Contains(row.Id)).ToDictionaryAsync(row => row.Id, stop);
        var inOrder = kept.Where(rows.ContainsKey).Select(id => rows[id]).ToArray();
        return (new(kept, await LotNames.OfAsync(db, kept, stop), await LotNames.ShowAsync(db, inOrder, stop)), ids.Count > most);
    }

    // Names that fit best first, each group's lots newest first.
    private async Task<IReadOnlyList<long>> OfNamesAsync(NameHits names, int most)
    {
        var ids = new List<long>();
        foreach (var group in names.Ranked.GroupBy(name => name.Fit).OrderByDescending(group => group.Key))
        {
            var of = group.Select(name => name.Id).ToArray();
            ids.AddRange(await Lots.Where(row => of.Contains(row.NameId)).OrderByDescending(row => row.LotId).Take(most - ids.Count).Select(row => row.LotId).ToListAsync(stop));
            if (ids.Count >= most) break;
        }

        return ids;
    }

    // So many names fit that the newest lots are soon among them.
    private async Task<IReadOnlyList<long>> NewestAsync(int most) => await Fitting().OrderByDescending(row => row.LotId).Take(most).Select(row => row.LotId).ToListAsync(stop);

    /// <summary>Every lot of the season whose name has all of the words.</summary>
    public IQueryable<SearchLotRow> Fitting()
    {
        var lots = Lots;
        foreach (var word in words)
        {
            var inUse = word.InUse;
            lots = lots.Where(lot => db.Set<SearchPostingRow>().Any(row => row.Kind == SearchIndex.Names && row.Ref == lot.NameId && inUse.Contains(row.Word)));
        }

        return lots;
    }

    private IQueryable<SearchLotRow> Lots => year is { } season ? db.Set<SearchLotRow>().Where(row => row.Year == season) : db.Set<SearchLotRow>();
}

/// <summary>What the search tables know of lots.</summary>
internal static class LotNames
{
    public static async Task<IReadOnlyDictionary<long, GoesBy>> OfAsync(LibraryDbContext db, IReadOnlyCollection<long> lots, CancellationToken stop) =>
        (await db.Set<SearchLotRow>().Where(row => lots.Contains(row.LotId)).Join(db.Set<SearchNameRow>(), row => row.NameId, name => name.Id, (row, name) => new { row.LotId, name.Display, name.Species }).ToListAsync(stop))
            .ToDictionary(row => row.LotId, row => new GoesBy(row.Display.Length > 0 ? row.Display : null, row.Species.Length > 0 ? row.Species : null));

    public static async Task<IReadOnlyList<FoundLot>> ShowAsync(LibraryDbContext db, IReadOnlyList<LotRow> lots, CancellationToken stop)
    {
        var ids = lots.Select(lot => lot.Id).ToArray();
        var names = await OfAsync(db, ids, stop);
        var years = await db.Set<SearchLotRow>().Where(row => ids.Contains(row.LotId)).ToDictionaryAsync(row => row.LotId, row => row.Year, stop);
        var onShelf = await db.Set<PacketRow>().Where(packet => ids.Contains(packet.LotId) && packet.Standing == PacketStanding.OnShelf)
            .GroupBy(packet => packet.LotId).Select(lot => new { Lot = lot.Key, Count = lot.Count() }).ToDictionaryAsync(lot => lot.Lot, lot => lot.Count, stop);
        return [.. lots.Select(lot => new FoundLot(lot.Code, names.GetValueOrDefault(lot.Id, GoesBy.NotKnown), years.GetValueOrDefault(lot.Id, lot.MadeOn.Year), onShelf.GetValueOrDefault(lot.Id)))];
    }
}
