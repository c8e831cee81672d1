using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Packets were put up from a lot, in one go at one table: a label swap can only happen between packets of one packing.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="PackedOn">The day.</param>
/// <param name="Packets">The packets, one or more, in the lot's unit.</param>
/// <param name="Place">Where they are kept; null when not said.</param>
public sealed record Packeted(LotId Lot, DateOnly PackedOn, IReadOnlyList<NewPacket> Packets, string? Place) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Packeted;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Lot.Node, .. Packets.Select(packet => packet.Packet.Node)];
}

/// <summary>One packet that was put up.</summary>
/// <param name="Packet">The new packet.</param>
/// <param name="Code">Its code.</param>
/// <param name="Holds">How much seed is in it.</param>
public sealed record NewPacket(PacketId Packet, PacketCode Code, Quantity Holds);
