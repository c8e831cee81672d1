using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>One lot of a list.</summary>
public sealed record LotLine(string Code, GoesBy Name, DateOnly MadeOn, Quantity Stock, long? ThousandSeedMilligrams, int OnShelf, bool IsHeld, string? Place);

/// <summary>A page of lots.</summary>
/// <param name="Lots">The lots, newest first.</param>
/// <param name="Total">How many there are in all.</param>
public sealed record LotLines(IReadOnlyList<LotLine> Lots, int Total);

/// <summary>Finds lots by code, name or species.</summary>
public sealed class FindLots(IDbContextFactory<LibraryDbContext> factory)
{
    public const int PageSize = 50;

    /// <param name="actor">Anybody; places are shown to those who run the desk.</param>
    /// <param name="query">The beginning of a code, or words of names, species, traits and a season; empty for all.</param>
    /// <param name="toLendOnly">True for the shelf: only lots with a packet free to lend.</param>
    /// <param name="page">From 1.</param>
    /// <param name="stop">Stops.</param>
    public async Task<LotLines> FindAsync(Actor actor, string? query, bool toLendOnly, int page, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var asked = (query ?? "").Trim();
        var lots = asked.Length == 0 ? db.Set<LotRow>() : await MatchingAsync(db, asked, stop);
        lots = lots.AsNoTracking().Where(lot => !lot.IsVoid);
        if (toLendOnly) lots = lots.Where(lot => db.Set<PacketRow>().Any(packet => packet.LotId == lot.Id && packet.Standing == PacketStanding.OnShelf));
        var total = await lots.CountAsync(stop);
        var rows = await lots.OrderByDescending(lot => lot.MadeOn).ThenByDescending(lot => lot.Id).Skip((Math.Max(1, page) - 1) * PageSize).Take(PageSize).ToListAsync(stop);

        return new(await LinesAsync(db, actor, rows, stop), total);
    }

    private static async Task<IReadOnlyList<LotLine>> LinesAsync(LibraryDbContext db, Actor actor, List<LotRow> rows, CancellationToken stop)
    {
        var ids = rows.Select(lot => lot.Id).ToArray();
        var names = await LineageNames.OfAsync(db, ids, stop);
        var onShelf = await db.Set<PacketRow>().Where(packet => ids.Contains(packet.LotId) && packet.Standing == PacketStanding.OnShelf)
            .GroupBy(packet => packet.LotId).Select(group => new { Lot = group.Key, Count = group.Count() }).ToDictionaryAsync(group => group.Lot, group => group.Count, stop);
        var held = await HeldAsync(db, ids, stop);
        return
        [
            .. rows.Select(lot => new LotLine(
                lot.Code, names[lot.Id], lot.MadeOn, new(lot.Stock, lot.Unit), lot.ThousandSeedMilligrams, onShelf.GetValueOrDefault(lot.Id), held.Contains(lot.Id), actor.IsVolunteer ? lot.Place : null)),
        ];
    }

    /// <summary>One lot by its code.</summary>
    public async Task<Outcome<LotLine>> OneAsync(Actor actor, string? code, CancellationToken stop)
    {
        if (!LotCode.TryParse(code, out var read, out var no)) return no;
        var text = read.ToString();
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await db.Set<LotRow>().AsNoTracking().Where(lot => lot.Code == text).ToListAsync(stop);
        if (rows is [{ IsVoid: true }]) return FindingRefusals.UndoneLot(text);
        return rows.Count == 0 ? FindingRefusals.NoLot(text) : (await LinesAsync(db, actor, rows, stop))[0];
    }

    // By the words of the search, so that a slip of spelling is forgiven here as there.
    private static async Task<IQueryable<LotRow>> MatchingAsync(LibraryDbContext db, string asked, CancellationToken stop)
    {
        var code = CodeSearch.Beginning(asked);
        if (code is not null && await CodeSearch.Lots(db, code).AnyAsync(stop)) return CodeSearch.Lots(db, code);
        // An accession has no page: its code finds the lots that were made of it.
        if (code is not null)
        {
            var accessions = CodeSearch.Accessions(db, code).Select(row => row.Id);
            var made = db.Set<LineageEdgeRow>().Where(edge => accessions.Contains(edge.ParentId)).Select(edge => edge.ChildId);
            var ofAccession = db.Set<LotRow>().Where(lot => made.Contains(lot.Id));
            if (await ofAccession.AnyAsync(stop)) return ofAccession;
        }

        var words = await AskedWords.ReadAsync(db, asked, [SearchIndex.Names], stop);
        if (words.FindNothing) return db.Set<LotRow>().Where(_ => false);
        var fitting = new LotSearch(db, words.Used, words.Year, stop).Fitting().Select(row => row.LotId);
        return db.Set<LotRow>().Where(lot => fitting.Contains(lot.Id));
    }

    private static async Task<HashSet<long>> HeldAsync(LibraryDbContext db, long[] ids, CancellationToken stop)
    {
        var edges = (await LineageSql.EdgesAboveAny(db, ids).AsNoTracking().ToListAsync(stop)).OrderBy(edge => edge.ChildId).ToArray();
        var nodes = edges.Select(edge => edge.ParentId).Concat(ids).Distinct().ToArray();
        var held = (await db.Set<HoldRow>().Where(hold => nodes.Contains(hold.NodeId) && hold.ReleasedOn == null && !hold.IsVoid).Select(hold => hold.NodeId).ToListAsync(stop)).ToHashSet();
        // Children come after their parents, so one pass carries a hold all the way down.
        foreach (var edge in edges)
        {
            if (held.Contains(edge.ParentId)) held.Add(edge.ChildId);
        }
        return held;
    }
}
