using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A packet was picked for a request and waits on the shelf for it.</summary>
/// <param name="Request">The request.</param>
/// <param name="Packet">The packet.</param>
public sealed record Picked(RequestId Request, PacketId Packet) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Picked;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Packet.Node];
}
