using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Writes what an entry changed over the rows that were loaded for it, and adds the rows that are new.</summary>
internal sealed class ChangeWriter(LibraryDbContext db)
{
    public void Write(LedgerEntry entry, SeedChanges changes)
    {
        db.Add(entry.ToRow());
        foreach (var subject in entry.Subjects) db.Add(new LedgerSubjectRow { NodeId = subject.Value, Sequence = entry.Sequence });
        foreach (var row in RecallRows(entry.ReadAct())) db.Add(row);
        foreach (var accession in changes.Accessions) Put(accession.Id.Value, accession.ToRow());
        foreach (var lot in changes.Lots) Put(lot.Id.Value, lot.ToRow());
        foreach (var packet in changes.Packets) Put(packet.Id.Value, packet.ToRow());
        foreach (var growOut in changes.GrowOuts) Put(growOut.Id.Value, growOut.ToRow());
        foreach (var loan in changes.Loans) Put(loan.Id.Value, loan.ToRow());
        foreach (var request in changes.Requests) Put(request.Id.Value, request.ToRow());
        foreach (var hold in changes.Holds) Put(hold.Id.Value, hold.ToRow());
        foreach (var claim in changes.Claims) Put(claim.Id.Value, claim.ToRow());
        foreach (var test in changes.Tests) Put(test.Id.Value, test.ToRow());
        foreach (var transfer in changes.Transfers) Put(transfer.Entry, transfer.ToRow());
        foreach (var edge in changes.Edges) PutEdge(edge.ToRow());
    }

    /// <summary>The rows a recall has beside its hold; none for other acts. The packets were listed by the ledger, so they need no state.</summary>
    public static IEnumerable<object> RecallRows(SeedAct act)
    {
        if (act is not Recalled recalled) yield break;
        yield return new RecallRow { HoldId = recalled.Hold.Value, NodeId = recalled.Node.Value, RecalledOn = recalled.RecalledOn, Reason = recalled.Reason };
        foreach (var packet in recalled.Packets) yield return new RecallPacketRow { HoldId = recalled.Hold.Value, PacketId = packet.Value };
    }

    private void Put<TRow>(long key, TRow row)
        where TRow : class
    {
        if (db.Set<TRow>().Local.FindEntry(key) is { } known) known.CurrentValues.SetValues(row);
        else db.Add(row);
    }

    private void PutEdge(LineageEdgeRow row)
    {
        if (db.Set<LineageEdgeRow>().Local.FindEntryUntyped([row.ParentId, row.ChildId]) is { } known) known.CurrentValues.SetValues(row);
        else db.Add(row);
    }
}
