using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>How a cause reaches a plant: straight, as a share of the plant's seed, or through packets that are each off or not.</summary>
/// <param name="Straight">The part of the plant's seed that passed the cause's node; 0 when none did.</param>
/// <param name="Packets">For a packing: the packets of it that the plant's seed passed, with the part of the seed.</param>
internal sealed record Reach(double Straight, (NodeId Packet, double Part)[] Packets)
{
    public bool Touches => Straight > 0 || Packets.Length > 0;

    /// <summary>The part of a node's seed that passed each of its ancestors, itself included with 1.</summary>
    public static Dictionary<NodeId, double> Parts(LineageGraph graph, NodeId node)
    {
        var parts = new Dictionary<NodeId, double> { [node] = 1 };

        // Newest first: a child's part is whole before it is handed up, since numbers rise along edges.
        foreach (var step in graph.Ancestors(node).Append(graph[node]).OrderByDescending(step => step.Id.Value))
        {
            foreach (var edge in graph.Above(step.Id)) parts[edge.Parent] = parts.GetValueOrDefault(edge.Parent) + (parts[step.Id] * edge.Share);
        }

        return parts;
    }

    public static Reach Of(Cause cause, TestedPlant plant, Dictionary<NodeId, double> parts, IReadOnlyDictionary<long, NodeId[]> packings)
    {
        switch (cause.Kind)
        {
            case CauseKind.SwappedAtPacking:
                var packets = packings.TryGetValue(cause.Packing!.Value, out var members) ? members : [];
                return new(0, packets.Where(parts.ContainsKey).Select(packet => (packet, Math.Min(1, parts[packet]))).ToArray());
            case CauseKind.LabelLost:
                return new(plant.IsByBorrower && plant.From == cause.Node ? 1 : 0, []);
            default:
                return new(Math.Min(1, parts.GetValueOrDefault(cause.Node)), []);
        }
    }
}
