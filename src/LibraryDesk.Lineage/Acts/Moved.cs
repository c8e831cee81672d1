using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A lot or a packet changed its place.</summary>
/// <param name="Node">The lot or packet.</param>
/// <param name="From">Where it was; null when not known.</param>
/// <param name="To">Where it is now, such as a drawer, freezer or branch.</param>
/// <param name="MovedOn">The day.</param>
public sealed record Moved(NodeId Node, string? From, string To, DateOnly MovedOn) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Moved;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node];
}
