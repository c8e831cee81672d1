using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.MixUps;

/// <summary>What a cause takes in, if it is what happened.</summary>
/// <param name="Codes">Codes from which to recall: everything downstream of them is in doubt. Empty when nothing of it came back to the library.</param>
/// <param name="Packets">Packets downstream.</param>
/// <param name="Holders">People who have or had one of them.</param>
/// <param name="RecallId">The newest of the open recalls that take in all of it already, alone or together; null when some of it is in none.</param>
public sealed record CauseScope(IReadOnlyList<string> Codes, int Packets, int Holders, long? RecallId)
{
    internal static async Task<CauseScope> OfAsync(LibraryDbContext db, Cause cause, CancellationToken stop)
    {
        var starts = await StartsAsync(db, cause, stop);
        var packets = await LineageSql.PacketsBelowAny(db, [.. starts.Select(start => start.Node)]).AsNoTracking()
            .Where(row => row.Standing != PacketStanding.Void).Select(row => new { row.Id, row.HolderId }).ToListAsync(stop);
        return new([.. starts.Select(start => start.Code)], packets.Count, packets.Select(packet => packet.HolderId).OfType<Guid>().Distinct().Count(), await CoveredByAsync(db, [.. packets.Select(packet => packet.Id)], stop));
    }

    private static async Task<IReadOnlyList<(long Node, string Code)>> StartsAsync(LibraryDbContext db, Cause cause, CancellationToken stop)
    {
        var node = cause.Node.Value;
        switch (cause.Kind)
        {
            case CauseKind.ArrivedWrong or CauseKind.ArrivedMixed:
                return [.. (await db.Set<AccessionRow>().Where(row => row.Id == node).Select(row => new { row.Id, row.Code }).ToListAsync(stop)).Select(row => (row.Id, row.Code))];
            case CauseKind.SwappedAtPacking:
                // Labels were swapped among the packets of one packing: the lot itself is sound, all of them are in doubt.
                return [.. (await db.Set<PacketRow>().Where(row => row.LotId == node && row.Packing == cause.Packing && row.Standing != PacketStanding.Void).OrderBy(row => row.Id)
                    .Select(row => new { row.Id, row.Code }).ToListAsync(stop)).Select(row => (row.Id, row.Code))];
            case CauseKind.LabelLost:
                // The packet's own seed is sound; what the borrower brought back as its seed is not.
                var grown = await db.Set<LineageEdgeRow>().Where(edge => edge.ParentId == node).Select(edge => edge.ChildId).ToListAsync(stop);
                return await LotsMadeOfAsync(db, grown, stop);
            default:
                return await LotsMadeOfAsync(db, [node], stop);
        }
    }

    private static async Task<IReadOnlyList<(long, string)>> LotsMadeOfAsync(LibraryDbContext db, IReadOnlyCollection<long> parents, CancellationToken stop)
    {
        var lots = await db.Set<LineageEdgeRow>().Where(edge => parents.Contains(edge.ParentId))
            .Join(db.Set<LotRow>().Where(lot => !lot.IsVoid), edge => edge.ChildId, lot => lot.Id, (_, lot) => new { lot.Id, lot.Code }).OrderBy(lot => lot.Id).ToListAsync(stop);
        return [.. lots.DistinctBy(lot => lot.Id).Select(lot => (lot.Id, lot.Code))];
    }

    // The packets of one packing are recalled one by one, so it is all open recalls together that cover them.
    private static async Task<long?> CoveredByAsync(LibraryDbContext db, long[] packets, CancellationToken stop)
    {
        if (packets.Length == 0) return null;
        var listed = await db.Set<RecallPacketRow>().Where(row => packets.Contains(row.PacketId))
            .Join(db.Set<HoldRow>().Where(hold => hold.ReleasedOn == null && !hold.IsVoid), row => row.HoldId, hold => hold.Id, (row, _) => row).AsNoTracking().ToListAsync(stop);
        return listed.DistinctBy(row => row.PacketId).Count() == packets.Length ? listed.Max(row => row.HoldId) : null;
    }
}
