using System.Globalization;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Graph;

/// <summary>
/// The lineage, or a slice of it, as a graph. It has no circles: numbers rise along every edge, and an edge that does not is refused.
/// </summary>
public sealed class LineageGraph
{
    private readonly SortedDictionary<long, LineageNode> _nodes = [];
    private readonly Dictionary<NodeId, List<LineageEdge>> _above = [];
    private readonly Dictionary<NodeId, List<LineageEdge>> _below = [];

    /// <param name="nodes">The nodes, each once.</param>
    /// <param name="edges">The edges between them. Both ends must be among the nodes.</param>
    public LineageGraph(IEnumerable<LineageNode> nodes, IEnumerable<LineageEdge> edges)
    {
        ArgumentNullException.ThrowIfNull(nodes);
        ArgumentNullException.ThrowIfNull(edges);
        foreach (var node in nodes) _nodes.Add(node.Id.Value, node);
        foreach (var edge in edges.OrderBy(edge => edge.Parent.Value).ThenBy(edge => edge.Child.Value))
        {
            if (edge.Parent.Value >= edge.Child.Value) throw new ArgumentException("An edge runs from the older number to the newer.", nameof(edges));
            if (!Has(edge.Parent) || !Has(edge.Child)) throw new ArgumentException("An edge leads out of the slice.", nameof(edges));
            Add(_below, edge.Parent, edge);
            Add(_above, edge.Child, edge);
        }
    }

    /// <summary>All nodes, oldest number first.</summary>
    public IReadOnlyCollection<LineageNode> Nodes => _nodes.Values;

    /// <summary>All edges, by parent.</summary>
    public IEnumerable<LineageEdge> Edges => _below.Values.SelectMany(edges => edges);

    /// <summary>The graph of a state. What was undone is left out.</summary>
    public static LineageGraph Of(SeedState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var nodes = new List<LineageNode>();
        nodes.AddRange(state.Accessions.Where(accession => !accession.IsVoid).Select(accession => new LineageNode(accession.Id.Node, NodeKind.Accession, accession.Code.ToString(), accession.ReceivedOn)));
        nodes.AddRange(state.Lots.Where(lot => !lot.IsVoid).Select(lot => new LineageNode(lot.Id.Node, NodeKind.Lot, lot.Code.ToString(), lot.MadeOn)));
        nodes.AddRange(state.Packets.Where(packet => packet.Standing != PacketStanding.Void).Select(packet => new LineageNode(packet.Id.Node, NodeKind.Packet, packet.Code.ToString(), packet.PackedOn)));
        nodes.AddRange(state.GrowOuts.Where(growOut => !growOut.IsVoid).Select(growOut => new LineageNode(growOut.Id.Node, NodeKind.GrowOut, Plants(growOut), growOut.SownOn)));
        var there = nodes.Select(node => node.Id).ToHashSet();
        return new(nodes, state.Edges.Where(edge => there.Contains(edge.Parent) && there.Contains(edge.Child)));
    }

    /// <summary>True when the slice has the node.</summary>
    public bool Has(NodeId id) => _nodes.ContainsKey(id.Value);

    /// <summary>The node; throws when the slice has it not.</summary>
    public LineageNode this[NodeId id] => _nodes[id.Value];

    /// <summary>The edges from a node's parents. Empty for an accession.</summary>
    public IReadOnlyList<LineageEdge> Above(NodeId id) => _above.GetValueOrDefault(id) ?? (IReadOnlyList<LineageEdge>)[];

    /// <summary>The edges to a node's children.</summary>
    public IReadOnlyList<LineageEdge> Below(NodeId id) => _below.GetValueOrDefault(id) ?? (IReadOnlyList<LineageEdge>)[];

    /// <summary>Everything the seed of a node came from, oldest first, without the node itself.</summary>
    public IReadOnlyList<LineageNode> Ancestors(NodeId id) => Reach(id, node => Above(node).Select(edge => edge.Parent));

    /// <summary>Everything that was made of the seed of a node, oldest first, without the node itself.</summary>
    public IReadOnlyList<LineageNode> Descendants(NodeId id) => Reach(id, node => Below(node).Select(edge => edge.Child));

    /// <summary>True when seed of the first node can be in the second; a node is not its own ancestor.</summary>
    public bool IsAncestor(NodeId ancestor, NodeId of) => ancestor.Value < of.Value && Ancestors(of).Any(node => node.Id == ancestor);

    /// <summary>
    /// The shortest way from one node to another, both ends included. Straight down or up when one comes from the other; else by way of
    /// what they have in common. Empty when they have nothing in common in this slice.
    /// </summary>
    public IReadOnlyList<LineageNode> Path(NodeId from, NodeId to)
    {
        if (from == to) return [this[from]];
        var down = Walk(from, to, node => Below(node).Select(edge => edge.Child));
        if (down.Count > 0) return down;
        var up = Walk(from, to, node => Above(node).Select(edge => edge.Parent));
        if (up.Count > 0) return up;
        return Walk(from, to, node => Above(node).Select(edge => edge.Parent).Concat(Below(node).Select(edge => edge.Child)));
    }

    /// <summary>
    /// The part of a node's seed that goes back to each accession (or to each node without parents in this slice), by seed count. The parts
    /// sum to 1. Founder contributions as in Lacy 1989, Zoo Biology 8:111-123, with seed shares in place of halves.
    /// </summary>
    public IReadOnlyDictionary<NodeId, double> Founders(NodeId id)
    {
        var parts = new SortedDictionary<long, double>(Comparer<long>.Create((left, right) => right.CompareTo(left))) { [id.Value] = 1 };
        var founders = new Dictionary<NodeId, double>();

        // From the newest number down: every child is done before its parents, since numbers rise along edges.
        while (parts.Count > 0)
        {
            var (value, part) = parts.First();
            parts.Remove(value);
            var above = Above(new(value));
            if (above.Count == 0) founders[new(value)] = part;
            foreach (var edge in above) parts[edge.Parent.Value] = parts.GetValueOrDefault(edge.Parent.Value) + (part * edge.Share);
        }

        return founders;
    }

    /// <summary>
    /// Everybody who has, or had last, seed of a node or of anything made of it: to be told of a recall. A packet that never left, or came
    /// back unopened, has no holder.
    /// </summary>
    public IReadOnlyList<Holding> Holders(NodeId id, IEnumerable<Packet> packets, IEnumerable<SeedTransfer> transfers)
    {
        ArgumentNullException.ThrowIfNull(packets);
        ArgumentNullException.ThrowIfNull(transfers);
        var downstream = Descendants(id).Select(node => node.Id).Append(id).ToHashSet();
        var people = packets
            .Where(packet => packet.Holder is not null && packet.Standing != PacketStanding.Void && downstream.Contains(packet.Id.Node))
            .Select(packet => new Holding(packet.Id.Node, packet.Holder, null));
        var libraries = transfers
            .Where(transfer => !transfer.IsVoid && downstream.Contains(transfer.Node))
            .Select(transfer => new Holding(transfer.Node, null, transfer.Library));
        return people.Concat(libraries).OrderBy(holding => holding.Node.Value).ToArray();
    }

    private static string Plants(GrowOut growOut) =>
        growOut.Facts.PlantsGrown is { } plants ? string.Create(CultureInfo.InvariantCulture, $"{plants} {(plants == 1 ? "plant" : "plants")}") : "grown";

    private static void Add(Dictionary<NodeId, List<LineageEdge>> edges, NodeId id, LineageEdge edge)
    {
        if (!edges.TryGetValue(id, out var list)) edges[id] = list = [];
        list.Add(edge);
    }

    private List<LineageNode> Reach(NodeId id, Func<NodeId, IEnumerable<NodeId>> next)
    {
        var seen = new SortedSet<long>();
        var open = new Stack<NodeId>();
        open.Push(id);
        while (open.TryPop(out var node))
        {
            foreach (var further in next(node))
            {
                if (seen.Add(further.Value)) open.Push(further);
            }
        }

        return seen.Select(value => _nodes[value]).ToList();
    }

    private List<LineageNode> Walk(NodeId from, NodeId to, Func<NodeId, IEnumerable<NodeId>> next)
    {
        var cameFrom = new Dictionary<NodeId, NodeId> { [from] = from };
        var open = new Queue<NodeId>();
        open.Enqueue(from);
        while (open.TryDequeue(out var node) && !cameFrom.ContainsKey(to))
        {
            foreach (var further in next(node))
            {
                if (cameFrom.TryAdd(further, node)) open.Enqueue(further);
            }
        }

        var way = new List<LineageNode>();
        if (!cameFrom.ContainsKey(to)) return way;
        for (var node = to; ; node = cameFrom[node])
        {
            way.Add(this[node]);
            if (node == from) break;
        }

        way.Reverse();
        return way;
    }
}

/// <summary>Who has seed, or had it last.</summary>
/// <param name="Node">The packet, or the lot or packet that was sent on.</param>
/// <param name="Person">The person; null when a library has it.</param>
/// <param name="Library">The library; null when a person has it.</param>
public sealed record Holding(NodeId Node, PersonId? Person, string? Library);
