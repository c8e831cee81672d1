using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Reads a node and everything up and down from it, with loans, holds, claims and tests, into one state.</summary>
internal static class LineageSlice
{
    public static async Task<SeedState> AroundAsync(LibraryDbContext db, long node, CancellationToken stop)
    {
        var above = await LineageSql.EdgesAbove(db, node).AsNoTracking().ToListAsync(stop);
        var below = await LineageSql.EdgesBelow(db, node).AsNoTracking().ToListAsync(stop);
        var edges = above.Concat(below).DistinctBy(edge => (edge.ParentId, edge.ChildId)).ToArray();
        var ids = edges.Select(edge => edge.ParentId).Concat(edges.Select(edge => edge.ChildId)).Append(node).Distinct().ToArray();

        var state = new SeedState();
        foreach (var edge in edges) state.Put(edge.ToRecord());
        foreach (var row in await db.Set<AccessionRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<LotRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<PacketRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<GrowOutRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<LoanRow>().AsNoTracking().Where(row => ids.Contains(row.PacketId)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<HoldRow>().AsNoTracking().Where(row => ids.Contains(row.NodeId)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<NameClaimRow>().AsNoTracking().Where(row => ids.Contains(row.NodeId)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<GerminationTestRow>().AsNoTracking().Where(row => ids.Contains(row.LotId)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<SeedTransferRow>().AsNoTracking().Where(row => ids.Contains(row.NodeId)).ToListAsync(stop)) state.Put(row.ToRecord());
        return state;
    }

    /// <summary>The names the nodes of a state go by.</summary>
    public static IReadOnlyDictionary<long, GoesBy> Names(SeedState state) => LineageNames.WorkOut(
        [.. state.Accessions.Select(a => a.Id.Value), .. state.Lots.Select(l => l.Id.Value), .. state.Packets.Select(p => p.Id.Value), .. state.GrowOuts.Select(g => g.Id.Value)],
        state.Edges.Select(edge => edge.ToRow()),
        state.Claims.Select(claim => claim.ToRow()).OrderBy(claim => claim.Id),
        state.Lots.ToDictionary(lot => lot.Id.Value, lot => lot.Species));
}
