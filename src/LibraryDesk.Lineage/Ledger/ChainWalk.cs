using System.Globalization;
using System.Text.Json;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>One walk along the chain, one entry at a time: for callers that read the ledger in their own way.</summary>
public sealed class ChainWalk
{
    private readonly Dictionary<long, EntryHash> _checkpoints = [];

    /// <param name="from">Where the walk begins.</param>
    /// <param name="checkpoints">Heads kept elsewhere, that the chain must pass through.</param>
    public ChainWalk(ChainHead from, IEnumerable<ChainHead> checkpoints)
    {
        ArgumentNullException.ThrowIfNull(checkpoints);
        Head = from;
        foreach (var checkpoint in checkpoints.Where(checkpoint => checkpoint.Height > from.Height)) _checkpoints[checkpoint.Height] = checkpoint.Hash;
    }

    /// <summary>The last entry that fits.</summary>
    public ChainHead Head { get; private set; }

    /// <summary>Looks at the next entry. Null when it fits; else what is wrong, and the walk is over.</summary>
    public ChainFault? Step(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var expected = Head.Height + 1;
        if (entry.Sequence != expected) return new(expected, ChainFaultKind.Sequence, string.Create(CultureInfo.InvariantCulture, $"Entry {expected} should come next, but entry {entry.Sequence} does."));
        if (entry.Previous != Head.Hash) return Fault(entry, ChainFaultKind.Previous, "does not name the hash of the entry before it");
        if (entry.At.Offset != TimeSpan.Zero || entry.At.Ticks % TimeSpan.TicksPerMillisecond != 0) return Fault(entry, ChainFaultKind.Form, "has a time that is not in UTC and whole milliseconds");
        if (!Chain.HashFits(entry)) return Fault(entry, ChainFaultKind.Hash, "has been changed: its hash is not the hash of what it says");
        if (ReadFault(entry) is { } unreadable) return unreadable;
        if (_checkpoints.TryGetValue(entry.Sequence, out var kept) && kept != entry.Hash) return Fault(entry, ChainFaultKind.Checkpoint, "is not the entry that the checkpoint was taken from");
        Head = Chain.HeadAfter(entry);
        return null;
    }

    /// <summary>Says that no entry follows: a checkpoint beyond the end means that entries are gone.</summary>
    public ChainReport Finish()
    {
        var missing = _checkpoints.Keys.Where(height => height > Head.Height).ToArray();
        if (missing.Length == 0) return new(Head, null);
        var text = string.Create(CultureInfo.InvariantCulture, $"The ledger ends at entry {Head.Height}, but a checkpoint was taken at entry {missing.Max()}.");
        return new(Head, new(Head.Height + 1, ChainFaultKind.Checkpoint, text));
    }

    // The hash proves that nobody changed the entry; this proves that it was well made, so that a ledger that verifies can be rebuilt from.
    private static ChainFault? ReadFault(LedgerEntry entry)
    {
        try
        {
            return SeedActJson.IsCanonical(entry.Payload) ? null : Fault(entry, ChainFaultKind.Form, "has a payload that is not canonical JSON");
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            return Fault(entry, ChainFaultKind.Payload, "has a payload that is not JSON");
        }
    }

    private static ChainFault Fault(LedgerEntry entry, ChainFaultKind kind, string what) =>
        new(entry.Sequence, kind, string.Create(CultureInfo.InvariantCulture, $"Entry {entry.Sequence} {what}."));
}
