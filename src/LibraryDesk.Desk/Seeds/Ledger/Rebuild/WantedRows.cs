using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger.Rebuild;

/// <summary>Replays the ledger from its first entry and leaves the rows it asks for in a scratch file; only a few thousand are in memory at once.</summary>
internal sealed class WantedRows(RebuildScratch scratch)
{
    private const int MostInMemory = 20_000;
    private readonly Dictionary<(string Kind, int Year), int> _series = [];
    private SeedState _state = new(scratch);
    private ChainHead _head;
    private long _lastId;

    /// <summary>Takes the next entry.</summary>
    /// <exception cref="LedgerMisfitException">What came before does not allow it.</exception>
    public void Take(LedgerEntry entry)
    {
        _state.Apply(entry);
        _head = Chain.HeadAfter(entry);
        foreach (var subject in entry.Subjects) scratch.Put(new LedgerSubjectRow { NodeId = subject.Value, Sequence = entry.Sequence });
        if (entry.Kind == EntryKind.Recalled)
        {
            foreach (var row in ChangeWriter.RecallRows(entry.ReadAct())) scratch.Put(row);
        }
        if (_state.Count > MostInMemory) PutAway();
    }

    /// <summary>Writes what is still in memory, and what stands beside the seed: the last numbers and the end of the chain.</summary>
    public void Finish()
    {
        PutAway();
        foreach (var ((kind, year), number) in _series) scratch.Put(new CodeSeriesRow { Kind = kind, Year = year, LastNumber = number });
        if (_head.Height > 0) scratch.Put(new LedgerHeadRow { Height = _head.Height, Hash = _head.Hash.Hex, LastSeedId = _lastId });
    }

    private void PutAway()
    {
        foreach (var accession in _state.Accessions) Put(accession.Id.Value, accession.ToRow(), "A", accession.Code.Year, accession.Code.Number);
        foreach (var lot in _state.Lots) Put(lot.Id.Value, lot.ToRow(), "L", lot.Code.Year, lot.Code.Number);
        foreach (var packet in _state.Packets) Put(packet.Id.Value, packet.ToRow(), "P", packet.Code.Year, packet.Code.Number);
        foreach (var growOut in _state.GrowOuts) Put(growOut.Id.Value, growOut.ToRow());
        foreach (var loan in _state.Loans) Put(loan.Id.Value, loan.ToRow());
        foreach (var request in _state.Requests) Put(request.Id.Value, request.ToRow());
        foreach (var hold in _state.Holds) Put(hold.Id.Value, hold.ToRow());
        foreach (var claim in _state.Claims) Put(claim.Id.Value, claim.ToRow());
        foreach (var test in _state.Tests) Put(test.Id.Value, test.ToRow());
        foreach (var transfer in _state.Transfers) scratch.Put(transfer.ToRow());
        foreach (var edge in _state.Edges) scratch.Put(edge.ToRow());
        _state = new SeedState(scratch);
    }

    // Nothing is ever taken out of the state, so the highest number seen is the last one handed out.
    private void Put(long id, object row)
    {
        _lastId = Math.Max(_lastId, id);
        scratch.Put(row);
    }

    private void Put(long id, object row, string series, int year, int number)
    {
        _series[(series, year)] = Math.Max(_series.GetValueOrDefault((series, year)), number);
        Put(id, row);
    }
}
