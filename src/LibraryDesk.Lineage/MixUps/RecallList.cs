using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>Everything that a cause can have reached: what to call back, and whom to tell.</summary>
/// <param name="Packets">Packets, oldest first; those still on the shelf too.</param>
/// <param name="Lots">Lots.</param>
/// <param name="GrowOuts">Grow-outs.</param>
/// <param name="Holders">Who has seed, or had it last.</param>
public sealed record RecallList(
    IReadOnlyList<NodeId> Packets,
    IReadOnlyList<NodeId> Lots,
    IReadOnlyList<NodeId> GrowOuts,
    IReadOnlyList<Holding> Holders)
{
    /// <summary>The recall list of a cause. The whole descent of its node must be in the graph.</summary>
    public static RecallList For(Cause cause, LineageGraph graph, IReadOnlyCollection<Packet> packets, IReadOnlyCollection<SeedTransfer> transfers)
    {
        ArgumentNullException.ThrowIfNull(cause);
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(packets);
        ArgumentNullException.ThrowIfNull(transfers);

        // Labels were swapped between the packets of one packing: the lot itself is sound, all of its packets are in doubt.
        var from = cause.Kind == CauseKind.SwappedAtPacking
            ? packets.Where(packet => packet.Packing == cause.Packing && packet.Standing != PacketStanding.Void).Select(packet => packet.Id.Node).ToArray()
            : [cause.Node];
        var reached = from.SelectMany(node => graph.Descendants(node).Append(graph[node])).DistinctBy(node => node.Id).OrderBy(node => node.Id.Value).ToArray();
        var holders = from.SelectMany(node => graph.Holders(node, packets, transfers)).Distinct().OrderBy(holding => holding.Node.Value).ToArray();
        IReadOnlyList<NodeId> Of(NodeKind kind) => reached.Where(node => node.Kind == kind).Select(node => node.Id).ToArray();
        return new(Of(NodeKind.Packet), Of(NodeKind.Lot), Of(NodeKind.GrowOut), holders);
    }
}
