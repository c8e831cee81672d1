using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Everything downstream of a node was called back. The node is held until the recall is closed.</summary>
/// <param name="Hold">The hold that comes with it.</param>
/// <param name="Node">Where the trouble began, or the packet alone for a label swap.</param>
/// <param name="Reason">Why, without anything about a person.</param>
/// <param name="RecalledOn">The day.</param>
/// <param name="Packets">The packets on the list, as it stood.</param>
public sealed record Recalled(HoldId Hold, NodeId Node, string Reason, DateOnly RecalledOn, IReadOnlyList<PacketId> Packets) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Recalled;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node, .. Packets.Select(packet => packet.Node)];
}
