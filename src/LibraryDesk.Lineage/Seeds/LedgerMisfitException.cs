using System.Globalization;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>A ledger entry that the state before it does not allow: the ledger, or the slice of state it was applied to, is broken.</summary>
public sealed class LedgerMisfitException : Exception
{
    /// <param name="sequence">The entry's number.</param>
    /// <param name="why">What does not fit.</param>
    public LedgerMisfitException(long sequence, string why)
        : base(string.Create(CultureInfo.InvariantCulture, $"Entry {sequence} does not fit: {why}"))
    {
        Sequence = sequence;
    }

    /// <summary>The entry's number.</summary>
    public long Sequence { get; }
}
