using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Data.Seeds;

/// <summary>One entry of the ledger, as it was hashed. Inserted only: both databases refuse to change or delete it.</summary>
public sealed class LedgerEntryRow
{
    public long Sequence { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid ActorId { get; set; }
    /// <summary>The kebab text of <see cref="EntryKind"/>, as hashed; text, so that a damaged one can still be read and named.</summary>
    public required string Kind { get; set; }
    /// <summary>Numbers of the nodes concerned, rising, with commas.</summary>
    public required string Subjects { get; set; }
    /// <summary>Canonical JSON.</summary>
    public required string Payload { get; set; }
    public required string PreviousHash { get; set; }
    public required string Hash { get; set; }
}

/// <summary>Which entries concern a node; so its history is found without reading the whole ledger.</summary>
public sealed class LedgerSubjectRow
{
    public long NodeId { get; set; }
    public long Sequence { get; set; }
}

/// <summary>The end of the chain and the last numbers handed out. One row, id 1; read and written under the ledger lock.</summary>
public sealed class LedgerHeadRow
{
    public int Id { get; set; } = 1;
    public long Height { get; set; }
    public required string Hash { get; set; }
    /// <summary>Last number of the one series all seed things share; 0 for an empty library.</summary>
    public long LastSeedId { get; set; }
}

/// <summary>The last running number of one kind of code in one year.</summary>
public sealed class CodeSeriesRow
{
    /// <summary>A for accessions, L for lots, P for packets.</summary>
    public required string Kind { get; set; }
    public int Year { get; set; }
    public int LastNumber { get; set; }
}
