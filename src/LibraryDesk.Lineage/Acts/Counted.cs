using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A stocktake. It may go up or down; the difference is on record with its reason.</summary>
/// <param name="Node">The lot, packet or accession.</param>
/// <param name="Expected">What the ledger said was there.</param>
/// <param name="Found">What was there.</param>
/// <param name="ThousandSeedMilligrams">Seed weight found in this stocktake; null when it was not measured, and what was known stays.</param>
/// <param name="CountedOn">The day.</param>
/// <param name="Reason">Why it differs, without anything about a person.</param>
public sealed record Counted(NodeId Node, Quantity Expected, Quantity Found, long? ThousandSeedMilligrams, DateOnly CountedOn, string Reason) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Counted;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node];
}
