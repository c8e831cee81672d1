namespace LibraryDesk.Lineage.Seeds;

/// <summary>What one ledger entry changed: every record as it is after the entry, to be written over the row of the same number, or added.</summary>
public sealed class SeedChanges
{
    private readonly Dictionary<(Type Kind, object Key), object> _changed = [];

    /// <summary>Accessions added or changed.</summary>
    public IEnumerable<Accession> Accessions => Of<Accession>();

    /// <summary>Lots added or changed.</summary>
    public IEnumerable<Lot> Lots => Of<Lot>();

    /// <summary>Packets added or changed.</summary>
    public IEnumerable<Packet> Packets => Of<Packet>();

    /// <summary>Grow-outs added or changed.</summary>
    public IEnumerable<GrowOut> GrowOuts => Of<GrowOut>();

    /// <summary>Loans added or changed.</summary>
    public IEnumerable<Loan> Loans => Of<Loan>();

    /// <summary>Requests added or changed.</summary>
    public IEnumerable<SeedRequest> Requests => Of<SeedRequest>();

    /// <summary>Holds added or changed.</summary>
    public IEnumerable<Hold> Holds => Of<Hold>();

    /// <summary>Name claims added or changed.</summary>
    public IEnumerable<NameClaim> Claims => Of<NameClaim>();

    /// <summary>Germination tests added or changed.</summary>
    public IEnumerable<GerminationTest> Tests => Of<GerminationTest>();

    /// <summary>Transfers added or changed.</summary>
    public IEnumerable<SeedTransfer> Transfers => Of<SeedTransfer>();

    /// <summary>Edges added or changed; the key is parent and child.</summary>
    public IEnumerable<LineageEdge> Edges => Of<LineageEdge>();

    internal void Note((Type Kind, object Key) key, object record) => _changed[key] = record;

    private IEnumerable<T> Of<T>() => _changed.Values.OfType<T>();
}
