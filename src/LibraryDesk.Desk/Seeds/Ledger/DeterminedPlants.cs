using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>A plant that is tied to a packet and was determined. Says nothing of its owner.</summary>
/// <param name="Packet">The packet it came from.</param>
/// <param name="PacketCode">Its code.</param>
/// <param name="Lot">The packet's lot.</param>
/// <param name="CaseId">Its case.</param>
/// <param name="Taxon">What it is, as a candidate id.</param>
/// <param name="Variety">Its variety; null when none was determined.</param>
/// <param name="At">When it was determined.</param>
public sealed record DeterminedPlant(NodeId Packet, string PacketCode, NodeId Lot, long CaseId, string Taxon, string? Variety, DateTimeOffset At);

/// <summary>
/// Finds what plants turned out to be that grew from packets of the lots of a lineage: through the determination's origin, or through a
/// stake or scan that ties the plant to its packet.
/// </summary>
internal static class DeterminedPlants
{
    public static Task<IReadOnlyList<DeterminedPlant>> OfAsync(LibraryDbContext db, SeedState state, CancellationToken stop)
    {
        var lots = state.Lots.Select(lot => lot.Id.Value).ToArray();
        return OfAsync(db, db.Set<PacketRow>().Where(packet => lots.Contains(packet.LotId)), stop);
    }

    /// <summary>Plants of some packets.</summary>
    public static async Task<IReadOnlyList<DeterminedPlant>> OfAsync(LibraryDbContext db, IQueryable<PacketRow> packets, CancellationToken stop)
    {
        var standing = db.Set<DeterminationRow>().AsNoTracking().Where(determination => determination.SupersededAt == null && determination.Qualifier == "");
        var named = await standing.Join(
            packets, determination => determination.OriginPacketCode, packet => packet.Code,
            (determination, packet) => new { determination.CaseId, determination.Taxon, determination.VarietyName, determination.At, packet.Id, packet.Code, packet.LotId }).ToListAsync(stop);
        var tied = await db.Set<OriginClueRow>().Where(clue => clue.Tied && clue.TakenBackAt == null)
            .Join(packets, clue => clue.PacketCode, packet => packet.Code, (clue, packet) => new { clue.CaseId, packet.Id, packet.Code, packet.LotId })
            .Join(standing, tie => tie.CaseId, determination => determination.CaseId,
                (tie, determination) => new { determination.CaseId, determination.Taxon, determination.VarietyName, determination.At, tie.Id, tie.Code, tie.LotId }).ToListAsync(stop);
        return [.. named.Concat(tied).DistinctBy(plant => (plant.CaseId, plant.Id)).OrderBy(plant => plant.CaseId)
            .Select(plant => new DeterminedPlant(new(plant.Id), plant.Code, new(plant.LotId), plant.CaseId, plant.Taxon, plant.VarietyName, plant.At))];
    }
}
