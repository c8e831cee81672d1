using System.Text;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Laws;

/// <summary>Every ledger that differs from a given one in a single bit of what one entry says.</summary>
internal static class FlippedBits
{
    /// <summary>The entry with each of its bits flipped in turn. A bit that makes a part unreadable is left out: whoever reads the ledger names that entry.</summary>
    public static IEnumerable<LedgerEntry> Of(LedgerEntry entry)
    {
        for (var bit = 0; bit < 63; bit++) yield return entry with { Sequence = entry.Sequence ^ (1L << bit) };
        for (var bit = 0; bit < 64; bit++)
        {
            var ticks = entry.At.Ticks ^ (1L << bit);
            if (ticks >= 0 && ticks <= DateTimeOffset.MaxValue.Ticks) yield return entry with { At = new DateTimeOffset(ticks, TimeSpan.Zero) };
        }

        foreach (var actor in Bytes(entry.Actor.Value.ToByteArray())) yield return entry with { Actor = new PersonId(new Guid(actor)) };
        foreach (var kind in Enum.GetValues<EntryKind>().Where(kind => kind != entry.Kind)) yield return entry with { Kind = kind };
        for (var place = 0; place < entry.Subjects.Count; place++)
        {
            for (var bit = 0; bit < 64; bit++)
            {
                var subjects = entry.Subjects.ToArray();
                subjects[place] = new NodeId(subjects[place].Value ^ (1L << bit));
                yield return entry with { Subjects = subjects };
            }
        }

        foreach (var payload in Bytes(Encoding.UTF8.GetBytes(entry.Payload))) yield return entry with { Payload = Encoding.UTF8.GetString(payload) };
        foreach (var hash in Hashes(entry.Previous)) yield return entry with { Previous = hash };
        foreach (var hash in Hashes(entry.Hash)) yield return entry with { Hash = hash };
    }

    private static IEnumerable<EntryHash> Hashes(EntryHash hash) => Bytes(Encoding.ASCII.GetBytes(hash.Hex))
        .Select(text => EntryHash.TryParse(Encoding.ASCII.GetString(text), out var flipped) ? flipped : hash).Where(flipped => flipped != hash);

    private static IEnumerable<byte[]> Bytes(byte[] bytes)
    {
        for (var at = 0; at < bytes.Length * 8; at++)
        {
            var flipped = bytes.ToArray();
            flipped[at / 8] ^= (byte)(1 << (at % 8));
            yield return flipped;
        }
    }
}
