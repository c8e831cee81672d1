using System.Text;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>The hash chain of the ledger: each entry names the hash of the one before, so that nothing can be changed, dropped or put in between unseen.</summary>
public static class Chain
{
    [ThreadStatic]
    private static EntryText? _text;

    /// <summary>Makes the next entry.</summary>
    /// <param name="head">The last entry, read under the lock of the chain head.</param>
    /// <param name="at">When; brought to UTC and cut to whole milliseconds, which both databases keep.</param>
    /// <param name="actor">Who.</param>
    /// <param name="act">What.</param>
    public static LedgerEntry Append(ChainHead head, DateTimeOffset at, PersonId actor, SeedAct act)
    {
        ArgumentNullException.ThrowIfNull(act);
        var utc = at.ToUniversalTime();
        var time = new DateTimeOffset(utc.Ticks - (utc.Ticks % TimeSpan.TicksPerMillisecond), TimeSpan.Zero);
        var subjects = act.Subjects.Distinct().OrderBy(node => node.Value).ToArray();
        var entry = new LedgerEntry(head.Height + 1, time, actor, act.Kind, subjects, SeedActJson.Write(act), head.Hash, default);
        return entry with { Hash = HashOf(entry) };
    }

    /// <summary>The head after an entry.</summary>
    public static ChainHead HeadAfter(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return new(entry.Sequence, entry.Hash);
    }

    /// <summary>The canonical JSON (RFC 8785) of everything but the hash.</summary>
    public static string CanonicalText(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Encoding.UTF8.GetString(new EntryText().Of(entry));
    }

    /// <summary>SHA-256 over <see cref="CanonicalText"/> in UTF-8.</summary>
    public static EntryHash HashOf(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return EntryHash.Of((_text ??= new EntryText()).Of(entry));
    }

    /// <summary>True when an entry's hash is the hash of what it says.</summary>
    public static bool HashFits(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Hash.IsOf((_text ??= new EntryText()).Of(entry));
    }

    /// <summary>Walks entries in the order they are given and stops at the first that does not fit. Holds one entry at a time.</summary>
    /// <param name="entries">The whole ledger from the first entry, or what follows <paramref name="from"/>.</param>
    /// <param name="from">Where the walk begins: <see cref="ChainHead.Empty"/> for the whole ledger, or a checkpoint that is trusted.</param>
    /// <param name="checkpoints">Heads kept elsewhere, that the chain must pass through. Those at or below <paramref name="from"/> are not looked at.</param>
    public static ChainReport Verify(IEnumerable<LedgerEntry> entries, ChainHead from = default, params IEnumerable<ChainHead> checkpoints)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var walk = new ChainWalk(from, checkpoints);
        foreach (var entry in entries)
        {
            if (walk.Step(entry) is { } fault) return new(walk.Head, fault);
        }

        return walk.Finish();
    }

    /// <summary>As the other, for entries that are read from a database as they come.</summary>
    public static async Task<ChainReport> VerifyAsync(IAsyncEnumerable<LedgerEntry> entries, ChainHead from, IEnumerable<ChainHead> checkpoints, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var walk = new ChainWalk(from, checkpoints);
        await foreach (var entry in entries.WithCancellation(stop).ConfigureAwait(false))
        {
            if (walk.Step(entry) is { } fault) return new(walk.Head, fault);
        }

        return walk.Finish();
    }
}
