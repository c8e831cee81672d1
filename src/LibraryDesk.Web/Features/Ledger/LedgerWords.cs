using LibraryDesk.Lineage.Ledger;
using static LibraryDesk.Web.Features.Ledger.LedgerText;

namespace LibraryDesk.Web.Features.Ledger;

/// <summary>What a walk along the ledger came to, in the reader's language.</summary>
internal static class LedgerWords
{
    // What an ordinary machine reads in a second, with room to spare: measured was more than twice as much.
    private const int EntriesASecond = 200_000;

    /// <summary>How long reading so many entries may take.</summary>
    public static string Time(long entries) => entries <= EntriesASecond
        ? Say["about a second"]
        : Say[$"about {(entries + EntriesASecond - 1) / EntriesASecond} seconds"];

    /// <summary>How many entries, with the number as people write it.</summary>
    public static string Entries(long entries) => Say.Count(entries, $"{entries:N0} entry", $"{entries:N0} entries");

    /// <summary>What is wrong with the first entry that does not fit.</summary>
    public static string Of(ChainFault fault) => fault.Kind switch
    {
        ChainFaultKind.Sequence => Say[$"Entry {fault.Sequence} is missing, or stands there twice."],
        ChainFaultKind.Previous => Say[$"Entry {fault.Sequence} does not name the hash of the entry before it."],
        ChainFaultKind.Hash => Say[$"Entry {fault.Sequence} was changed: its hash is not the hash of what it says."],
        ChainFaultKind.Checkpoint => Say[$"From entry {fault.Sequence} on the ledger is not the one that was noted: entries were cut off, added past the end or written anew."],
        _ => Say[$"Entry {fault.Sequence} was changed: a part of it cannot be read."],
    };
}
