using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Data.Seeds;

/// <summary>Keeps a node and all downstream of it from lending. Derived from the ledger.</summary>
public sealed class HoldRow
{
    public long Id { get; set; }
    public long NodeId { get; set; }
    public HoldReason Reason { get; set; }
    public DateOnly HeldOn { get; set; }
    public DateOnly? ReleasedOn { get; set; }
    public string? ReleasedWhy { get; set; }
    public bool IsVoid { get; set; }
}

/// <summary>What a recall says, beside its hold. Derived from the ledger.</summary>
public sealed class RecallRow
{
    /// <summary>The hold that came with it; while that stands, the recall is open.</summary>
    public long HoldId { get; set; }
    public long NodeId { get; set; }
    public DateOnly RecalledOn { get; set; }
    public required string Reason { get; set; }
}

/// <summary>A packet on a recall's list. Derived from the ledger.</summary>
public sealed class RecallPacketRow
{
    public long HoldId { get; set; }
    public long PacketId { get; set; }
}

/// <summary>What a holder of a recalled packet answered. Not in the ledger: it is between the library and that person.</summary>
public sealed class RecallAnswerRow
{
    public long HoldId { get; set; }
    public long PacketId { get; set; }
    public Guid PersonId { get; set; }
    /// <summary>When they were told; null while they were not.</summary>
    public DateTimeOffset? ToldAt { get; set; }
    /// <summary>When they were told for the first time, before a reminder or before it was opened again; null while they never were, or where nobody kept it.</summary>
    public DateTimeOffset? FirstToldAt { get; set; }
    public RecallAnswer? Answer { get; set; }
    public DateTimeOffset? AnsweredAt { get; set; }
    /// <summary>What a librarian has to know beside the answer, such as who has the packet now; null for nothing.</summary>
    public string? Note { get; set; }
}

/// <summary>Another library that was told of a recall. Not in the ledger.</summary>
public sealed class RecallLibraryRow
{
    public long HoldId { get; set; }
    /// <summary>The entry of the ledger by which seed went there.</summary>
    public long Entry { get; set; }
    public DateTimeOffset ToldAt { get; set; }
}

/// <summary>What became of a recalled packet.</summary>
public enum RecallAnswer
{
    NotSown,
    Growing,
    SeedSaved,
    PassedOn,
    Gone,
}
