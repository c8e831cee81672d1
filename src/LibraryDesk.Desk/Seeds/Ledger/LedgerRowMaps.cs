using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Ledger rows as entries and back.</summary>
internal static class LedgerRowMaps
{
    public static LedgerEntryRow ToRow(this LedgerEntry entry) => new()
    {
        Sequence = entry.Sequence,
        At = entry.At,
        ActorId = entry.Actor.Value,
        Kind = SeedActJson.NameOf(entry.Kind),
        Subjects = string.Join(',', entry.Subjects.Select(node => node.Value.ToString(CultureInfo.InvariantCulture))),
        Payload = entry.Payload,
        PreviousHash = entry.Previous.Hex,
        Hash = entry.Hash.Hex,
    };

    /// <summary>The entry; null when a part of the row cannot even be read, which only damage can do.</summary>
    public static LedgerEntry? ToEntry(this LedgerEntryRow row)
    {
        if (SeedActJson.KindOf(row.Kind) is not { } kind) return null;
        if (!EntryHash.TryParse(row.PreviousHash, out var previous) || !EntryHash.TryParse(row.Hash, out var hash)) return null;
        return Subjects(row.Subjects) is { } subjects ? new(row.Sequence, row.At, new(row.ActorId), kind, subjects, row.Payload, previous, hash) : null;
    }

    private static NodeId[]? Subjects(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty) return [];
        var subjects = new NodeId[text.Count(',') + 1];
        var at = 0;
        foreach (var part in text.Split(','))
        {
            if (!long.TryParse(text[part], NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return null;
            subjects[at++] = new(number);
        }
        return subjects;
    }

    public static ChainHead ToHead(this LedgerHeadRow row) =>
        new(row.Height, EntryHash.TryParse(row.Hash, out var hash) ? hash : throw new InvalidOperationException("The hash beside the ledger is not a hash. Run desk verify."));
}
