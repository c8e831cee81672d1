using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>The people a recall has to ask: whoever has, or had last, a packet downstream of where it began.</summary>
internal static class RecallAnswers
{
    /// <summary>Puts down whom a new recall has to ask. What they were told and answered in a recall of the same packet that is open stands here too.</summary>
    public static async Task BeginAsync(LibraryDbContext db, long holdId, IReadOnlyCollection<(long Packet, Guid Holder)> held, CancellationToken stop)
    {
        var packets = held.Select(packet => packet.Packet).ToArray();
        var open = db.Set<HoldRow>().Where(hold => !hold.IsVoid && hold.ReleasedOn == null && hold.Id != holdId).Select(hold => hold.Id);
        var known = (await db.Set<RecallAnswerRow>().AsNoTracking().Where(row => packets.Contains(row.PacketId) && open.Contains(row.HoldId)).ToListAsync(stop)).ToLookup(row => (row.PacketId, row.PersonId));
        foreach (var (packet, holder) in held)
        {
            var before = known[(packet, holder)].MaxBy(row => (row.AnsweredAt ?? row.ToldAt, row.HoldId));
            db.Add(new RecallAnswerRow
            {
                HoldId = holdId, PacketId = packet, PersonId = holder, ToldAt = before?.ToldAt, FirstToldAt = before?.FirstToldAt ?? before?.ToldAt, Answer = before?.Answer, AnsweredAt = before?.AnsweredAt, Note = before?.Note,
            });
        }
    }

    /// <summary>A recall that is opened again: packets that left meanwhile are asked about too, and everybody is told anew, since they were told that it is over. Answers stay.</summary>
    public static async Task RenewAsync(SeedWork work, Hold hold)
    {
        if (hold is not { Stands: true, Reason: HoldReason.Recall }) return;
        var (db, id) = (work.Db, hold.Id.Value);
        var known = await db.Set<RecallAnswerRow>().Where(row => row.HoldId == id).ToDictionaryAsync(row => row.PacketId, work.Stop);
        var below = await LineageSql.PacketsBelow(db, hold.Node.Value).AsNoTracking()
            .Where(packet => packet.Standing != PacketStanding.Void && packet.HolderId != null).Select(packet => new { packet.Id, Holder = packet.HolderId!.Value }).ToListAsync(work.Stop);
        foreach (var packet in below)
        {
            if (!known.TryGetValue(packet.Id, out var row)) db.Add(new RecallAnswerRow { HoldId = id, PacketId = packet.Id, PersonId = packet.Holder });
            else if (row.PersonId != packet.Holder) (row.PersonId, row.ToldAt, row.FirstToldAt, row.Answer, row.AnsweredAt, row.Note) = (packet.Holder, null, null, null, null, null);
        }

        foreach (var row in known.Values) (row.FirstToldAt, row.ToldAt) = (row.FirstToldAt ?? row.ToldAt, null);
    }
}
