namespace LibraryDesk.Lineage.Ledger;

/// <summary>What is wrong with the first entry that does not fit.</summary>
public enum ChainFaultKind
{
    /// <summary>A number is missing, or stands twice.</summary>
    Sequence,

    /// <summary>The entry does not name the hash of the one before.</summary>
    Previous,

    /// <summary>The entry's own hash is not the hash of what it says.</summary>
    Hash,

    /// <summary>The time is not UTC in whole milliseconds, or a part is not in canonical form.</summary>
    Form,

    /// <summary>The payload cannot be read as its kind.</summary>
    Payload,

    /// <summary>The ledger does not reach the checkpoint, or has another hash at its height.</summary>
    Checkpoint,
}

/// <summary>The first entry of a ledger that does not fit, and why.</summary>
/// <param name="Sequence">The number of the entry; for a chain that is too short, the number that is missing.</param>
/// <param name="Kind">What does not fit.</param>
/// <param name="Why">For the librarian, in one sentence.</param>
public sealed record ChainFault(long Sequence, ChainFaultKind Kind, string Why);

/// <summary>What walking the chain came to.</summary>
/// <param name="Head">The last entry that fits.</param>
/// <param name="Fault">The first entry that does not; null when the whole chain is sound.</param>
public sealed record ChainReport(ChainHead Head, ChainFault? Fault)
{
    /// <summary>True when every entry fits.</summary>
    public bool IsSound => Fault is null;
}
