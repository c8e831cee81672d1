using System.Buffers;
using System.Globalization;
using System.Text;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>The hash chain of the ledger: each entry names the hash of the one before, so that nothing can be changed, dropped or put in between unseen.</summary>
public static class Chain
{
    [ThreadStatic]
    private static StringBuilder? _text;

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

    /// <summary>
    /// The canonical JSON (RFC 8785) of everything but the hash. Its member names are fixed and already in order, and the payload is
    /// canonical as stored, so it is put together without parsing.
    /// </summary>
    public static string CanonicalText(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var text = new StringBuilder(entry.Payload.Length + 320);
        Write(entry, text);
        return text.ToString();
    }

    /// <summary>SHA-256 over <see cref="CanonicalText"/>.</summary>
    public static EntryHash HashOf(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var text = _text ??= new StringBuilder(2048);
        text.Clear();
        Write(entry, text);

        // One run of characters: a builder's pieces could cut a surrogate pair in two.
        var characters = ArrayPool<char>.Shared.Rent(text.Length);
        text.CopyTo(0, characters, text.Length);
        var bytes = ArrayPool<byte>.Shared.Rent(Encoding.UTF8.GetMaxByteCount(text.Length));
        var length = Encoding.UTF8.GetBytes(characters, 0, text.Length, bytes, 0);
        var hash = EntryHash.Of(bytes.AsSpan(0, length));
        ArrayPool<byte>.Shared.Return(bytes);
        ArrayPool<char>.Shared.Return(characters);
        return hash;
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

    private static void Write(LedgerEntry entry, StringBuilder text)
    {
        text.Append(CultureInfo.InvariantCulture, $"{{\"actor\":\"{entry.Actor.Value:D}\",\"kind\":\"{SeedActJson.NameOf(entry.Kind)}\",\"payload\":");
        text.Append(entry.Payload);
        text.Append(CultureInfo.InvariantCulture, $",\"previous\":\"{entry.Previous.Hex}\",\"sequence\":{entry.Sequence},\"subjects\":[");
        for (var place = 0; place < entry.Subjects.Count; place++)
        {
            if (place > 0) text.Append(',');
            text.Append(entry.Subjects[place].Value);
        }

        text.Append(CultureInfo.InvariantCulture, $"],\"time\":\"{entry.At.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}\"}}");
    }
}
