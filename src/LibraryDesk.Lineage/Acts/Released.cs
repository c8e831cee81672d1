using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A hold was lifted; lifting the hold of a recall closes the recall.</summary>
/// <param name="Hold">The hold.</param>
/// <param name="Node">What it was on.</param>
/// <param name="ReleasedOn">The day; not before the hold.</param>
/// <param name="Why">In words, without anything about a person.</param>
public sealed record Released(HoldId Hold, NodeId Node, DateOnly ReleasedOn, string Why) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Released;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node];
}
