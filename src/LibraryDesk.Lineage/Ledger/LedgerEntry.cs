using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>One act on seed, as it stands in the ledger for good.</summary>
/// <param name="Sequence">1 for the first entry, then without a gap.</param>
/// <param name="At">UTC, whole milliseconds.</param>
/// <param name="Actor">Who did it: an opaque id, so a person can be erased and the chain still verifies.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Subjects">The seed things concerned, in rising order.</param>
/// <param name="Payload">The facts, as canonical JSON.</param>
/// <param name="Previous">The hash of the entry before; zeros for the first.</param>
/// <param name="Hash">SHA-256 over the canonical JSON of all of the above.</param>
public sealed record LedgerEntry(
    long Sequence,
    DateTimeOffset At,
    PersonId Actor,
    EntryKind Kind,
    IReadOnlyList<NodeId> Subjects,
    string Payload,
    EntryHash Previous,
    EntryHash Hash)
{
    /// <summary>The facts, read. Throws when the payload is not what its kind asks for: run <see cref="Chain.Verify"/> on a ledger that may be damaged.</summary>
    public SeedAct ReadAct() => SeedActJson.Read(Kind, Payload);
}
