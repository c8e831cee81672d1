using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A packet on the list of a recall: from the start, or because its holder is asked since, as after it left while the recall was closed.</summary>
internal sealed class ListedPacket
{
    public long HoldId { get; init; }

    public long PacketId { get; init; }

    /// <summary>Packets of all recalls; one may stand there twice.</summary>
    public static IQueryable<ListedPacket> Of(LibraryDbContext db) =>
        db.Set<RecallPacketRow>().Select(row => new ListedPacket { HoldId = row.HoldId, PacketId = row.PacketId })
            .Concat(db.Set<RecallAnswerRow>().Select(row => new ListedPacket { HoldId = row.HoldId, PacketId = row.PacketId }));

    /// <summary>Packets of recalls that are open; one may stand there twice.</summary>
    public static IQueryable<ListedPacket> Open(LibraryDbContext db) =>
        Of(db).Where(listed => db.Set<HoldRow>().Any(hold => hold.Id == listed.HoldId && hold.ReleasedOn == null && !hold.IsVoid));
}
