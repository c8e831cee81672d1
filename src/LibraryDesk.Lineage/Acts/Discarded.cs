using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Seed was thrown away.</summary>
/// <param name="Node">The lot, packet, accession or harvest.</param>
/// <param name="Seed">How much, in its unit.</param>
/// <param name="DiscardedOn">The day.</param>
/// <param name="Reason">Why, without anything about a person.</param>
public sealed record Discarded(NodeId Node, Quantity Seed, DateOnly DiscardedOn, string Reason) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Discarded;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node];
}
