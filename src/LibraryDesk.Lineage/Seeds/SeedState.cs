using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>
/// The state of the seed: stock, holders, holds, claims. It is derived from ledger entries and nothing else. It may hold the whole library
/// (a rebuild) or the small slice that one entry touches (an act): <see cref="Apply"/> reads only the nodes that the entry names, and
/// the loans, holds and requests named with them.
/// </summary>
/// <param name="beneath">Where records are looked for that are not in the slice; null for nowhere.</param>
public sealed class SeedState(ISeedRecords? beneath = null)
{
    private readonly Dictionary<AccessionId, Accession> _accessions = [];
    private readonly Dictionary<LotId, Lot> _lots = [];
    private readonly Dictionary<PacketId, Packet> _packets = [];
    private readonly Dictionary<GrowOutId, GrowOut> _growOuts = [];
    private readonly Dictionary<LoanId, Loan> _loans = [];
    private readonly Dictionary<RequestId, SeedRequest> _requests = [];
    private readonly Dictionary<HoldId, Hold> _holds = [];
    private readonly Dictionary<ClaimId, NameClaim> _claims = [];
    private readonly Dictionary<TestId, GerminationTest> _tests = [];
    private readonly Dictionary<long, SeedTransfer> _transfers = [];
    private readonly Dictionary<(NodeId Parent, NodeId Child), LineageEdge> _edges = [];
    private SeedChanges? _changes;

    /// <summary>All accessions of the slice, void ones too.</summary>
    public IReadOnlyCollection<Accession> Accessions => _accessions.Values;

    /// <summary>All lots of the slice, void ones too.</summary>
    public IReadOnlyCollection<Lot> Lots => _lots.Values;

    /// <summary>All packets of the slice, void ones too.</summary>
    public IReadOnlyCollection<Packet> Packets => _packets.Values;

    /// <summary>All grow-outs of the slice, void ones too.</summary>
    public IReadOnlyCollection<GrowOut> GrowOuts => _growOuts.Values;

    /// <summary>All loans of the slice.</summary>
    public IReadOnlyCollection<Loan> Loans => _loans.Values;

    /// <summary>All requests of the slice.</summary>
    public IReadOnlyCollection<SeedRequest> Requests => _requests.Values;

    /// <summary>All holds of the slice.</summary>
    public IReadOnlyCollection<Hold> Holds => _holds.Values;

    /// <summary>All name claims of the slice.</summary>
    public IReadOnlyCollection<NameClaim> Claims => _claims.Values;

    /// <summary>All germination tests of the slice.</summary>
    public IReadOnlyCollection<GerminationTest> Tests => _tests.Values;

    /// <summary>All transfers of the slice.</summary>
    public IReadOnlyCollection<SeedTransfer> Transfers => _transfers.Values;

    /// <summary>All edges of the slice.</summary>
    public IReadOnlyCollection<LineageEdge> Edges => _edges.Values;

    /// <summary>An accession; null when the slice has none of that number.</summary>
    public Accession? Find(AccessionId id) => _accessions.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A lot; null when the slice has none of that number.</summary>
    public Lot? Find(LotId id) => _lots.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A packet; null when the slice has none of that number.</summary>
    public Packet? Find(PacketId id) => _packets.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A grow-out; null when the slice has none of that number.</summary>
    public GrowOut? Find(GrowOutId id) => _growOuts.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A loan; null when the slice has none of that number.</summary>
    public Loan? Find(LoanId id) => _loans.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A request; null when the slice has none of that number.</summary>
    public SeedRequest? Find(RequestId id) => _requests.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A hold; null when the slice has none of that number.</summary>
    public Hold? Find(HoldId id) => _holds.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A claim; null when the slice has none of that number.</summary>
    public NameClaim? Find(ClaimId id) => _claims.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A test; null when the slice has none of that number.</summary>
    public GerminationTest? Find(TestId id) => _tests.GetValueOrDefault(id) ?? beneath?.Find(id);

    /// <summary>A transfer by its entry; null when the slice has none.</summary>
    public SeedTransfer? FindTransfer(long entry) => _transfers.GetValueOrDefault(entry) ?? beneath?.FindTransfer(entry);

    /// <summary>How many records are in the slice.</summary>
    public int Count => _accessions.Count + _lots.Count + _packets.Count + _growOuts.Count + _loans.Count + _requests.Count + _holds.Count + _claims.Count + _tests.Count + _transfers.Count + _edges.Count;

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(Accession accession) => Set(_accessions, accession.Id, accession);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(Lot lot) => Set(_lots, lot.Id, lot);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(Packet packet) => Set(_packets, packet.Id, packet);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(GrowOut growOut) => Set(_growOuts, growOut.Id, growOut);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(Loan loan) => Set(_loans, loan.Id, loan);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(SeedRequest request) => Set(_requests, request.Id, request);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(Hold hold) => Set(_holds, hold.Id, hold);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(NameClaim claim) => Set(_claims, claim.Id, claim);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(GerminationTest test) => Set(_tests, test.Id, test);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(SeedTransfer transfer) => Set(_transfers, transfer.Entry, transfer);

    /// <summary>Puts a loaded record into the slice.</summary>
    public void Put(LineageEdge edge) => Set(_edges, (edge.Parent, edge.Child), edge);

    /// <summary>Applies the next entry and says what it changed.</summary>
    /// <exception cref="LedgerMisfitException">The state does not allow the entry. The slice must be thrown away then.</exception>
    public SeedChanges Apply(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        _changes = new SeedChanges();
        new SeedReplay(this, entry.Sequence).Apply(entry.ReadAct());
        var changes = _changes;
        _changes = null;
        return changes;
    }

    private void Set<TKey, TRecord>(Dictionary<TKey, TRecord> records, TKey key, TRecord record)
        where TKey : notnull
        where TRecord : class
    {
        ArgumentNullException.ThrowIfNull(record);
        records[key] = record;
        _changes?.Note((typeof(TRecord), key), record);
    }
}
