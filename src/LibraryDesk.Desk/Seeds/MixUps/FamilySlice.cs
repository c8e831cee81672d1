using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.MixUps;

/// <summary>The part of the lineage that can say where a mix-up happened: a lot's whole kin with determined plants, and all above them.</summary>
/// <param name="State">Everything upstream of the lot, of each plant and of each candidate for a check.</param>
/// <param name="Plants">Determined plants of the kin, newest first.</param>
/// <param name="Candidates">Lots with seed left, and one packet on the shelf of each packing: what could be sown as a check.</param>
/// <param name="LeftOut">Plants beyond <see cref="MostPlants"/>, older than those taken.</param>
internal sealed record FamilySlice(SeedState State, IReadOnlyList<DeterminedPlant> Plants, IReadOnlyList<NodeId> Candidates, int LeftOut)
{
    /// <summary>Causes are enumerated in pairs over all plants, so their number is held.</summary>
    public const int MostPlants = 40;

    private const int MostCandidates = 24;

    /// <param name="db">The library.</param>
    /// <param name="lot">The lot.</param>
    /// <param name="packet">A packet of it that is to be in the slice; null for none.</param>
    /// <param name="stop">Stops.</param>
    public static async Task<FamilySlice> ReadAsync(LibraryDbContext db, long lot, long? packet, CancellationToken stop)
    {
        var all = (await DeterminedPlants.OfAsync(db, PacketsOfKin(db, lot), stop)).OrderByDescending(plant => plant.At).ThenByDescending(plant => plant.CaseId).ToArray();
        var plants = all.Take(MostPlants).ToArray();
        var edges = await LineageSql.EdgesAboveAny(db, [.. plants.Select(plant => plant.Packet.Value).Append(packet ?? lot).Distinct()]).AsNoTracking().ToListAsync(stop);
        var above = edges.SelectMany(edge => new[] { edge.ParentId, edge.ChildId }).Append(lot).Distinct().ToArray();
        var lots = await db.Set<LotRow>().AsNoTracking().Where(row => above.Contains(row.Id)).ToListAsync(stop);
        var withSeed = lots.Where(row => row is { Stock: > 0, IsVoid: false }).Select(row => row.Id).ToArray();
        var shelf = await db.Set<PacketRow>().Where(packet => withSeed.Contains(packet.LotId) && packet.Standing == PacketStanding.OnShelf)
            .GroupBy(packet => packet.Packing).Select(packing => packing.Min(packet => packet.Id)).OrderByDescending(id => id).Take(MostCandidates).ToListAsync(stop);
        edges.AddRange(await db.Set<LineageEdgeRow>().AsNoTracking().Where(edge => shelf.Contains(edge.ChildId)).ToListAsync(stop));

        var ids = above.Concat(shelf).Distinct().ToArray();
        var state = new SeedState();
        foreach (var edge in edges.DistinctBy(edge => (edge.ParentId, edge.ChildId))) state.Put(edge.ToRecord());
        foreach (var row in lots) state.Put(row.ToRecord());
        foreach (var row in await db.Set<AccessionRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<PacketRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<GrowOutRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToListAsync(stop)) state.Put(row.ToRecord());
        foreach (var row in await db.Set<NameClaimRow>().AsNoTracking().Where(row => ids.Contains(row.NodeId)).ToListAsync(stop)) state.Put(row.ToRecord());
        var candidates = withSeed.Concat(shelf).Order().Take(2 * MostCandidates).Select(id => new NodeId(id)).ToArray();
        return new(state, plants, candidates, all.Length - plants.Length);
    }

    /// <summary>What nodes were said to be before any plant was determined: the desk's own claims say what the plants said.</summary>
    public IReadOnlyDictionary<long, GoesBy> SaidNames()
    {
        var edges = State.Edges.Select(edge => edge.ToRow()).ToArray();
        var nodes = edges.SelectMany(edge => new[] { edge.ParentId, edge.ChildId }).Concat(State.Lots.Select(lot => lot.Id.Value)).Distinct().ToArray();
        var claims = State.Claims.Where(claim => claim.Grounds != Lineage.Acts.ClaimGrounds.DeskDetermination).Select(claim => claim.ToRow()).OrderBy(claim => claim.Id);
        return LineageNames.WorkOut(nodes, edges, claims, State.Lots.ToDictionary(lot => lot.Id.Value, lot => lot.Species));
    }

    // Kin: everything made of anything the lot came from.
    private static IQueryable<PacketRow> PacketsOfKin(LibraryDbContext db, long lot) => db.Set<PacketRow>().FromSql(
        $"""
        SELECT p.* FROM packets p WHERE p.id IN (
            WITH RECURSIVE up(id) AS (
                SELECT CAST({lot} AS bigint)
                UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id),
            down(id) AS (
                SELECT id FROM up
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
            SELECT id FROM down)
        """);
}
