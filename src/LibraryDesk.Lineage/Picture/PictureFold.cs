using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Picture;

/// <summary>Folds the packets of a lot that tell nothing into "n more", and gives what is left as boxes and links.</summary>
internal sealed class PictureFold
{
    public PictureFold(LineageGraph graph, PictureWish wish)
    {
        var boxOf = new Dictionary<NodeId, Box>();
        foreach (var node in graph.Nodes)
        {
            if (boxOf.ContainsKey(node.Id)) continue;
            boxOf[node.Id] = new Box(node, wish);
            if (node.Kind == NodeKind.Lot) Fold(graph, wish, node, boxOf);
        }

        Boxes = boxOf.Values.Distinct().OrderBy(box => box.On).ThenBy(box => box.Number).ToArray();
        foreach (var links in graph.Edges.GroupBy(edge => (From: boxOf[edge.Parent], To: boxOf[edge.Child])))
        {
            var edges = links.ToArray();
            var link = new Link(links.Key.From, links.Key.To, Share(graph, edges));
            link.From.Below.Add(link);
            link.To.Above.Add(link);
        }
    }

    public IReadOnlyList<Box> Boxes { get; }

    private static void Fold(LineageGraph graph, PictureWish wish, LineageNode lot, Dictionary<NodeId, Box> boxOf)
    {
        if (wish.Opened?.Contains(lot.Id) == true) return;
        var packets = graph.Below(lot.Id)
            .Select(edge => graph[edge.Child])
            .Where(node => node.Kind == NodeKind.Packet && graph.Below(node.Id).Count == 0 && node.Id != wish.Here)
            .ToArray();

        // What showed something stays in sight longest; of the rest the oldest do.
        var inOrder = packets.OrderByDescending(packet => wish.Marks.GetValueOrDefault(packet.Id)).ThenBy(packet => packet.Id.Value).ToArray();
        var marked = inOrder.Count(packet => wish.Marks.GetValueOrDefault(packet.Id) != NodeMark.None);
        var shown = Math.Max(wish.PacketsShown - 1, Math.Min(marked, 2 * wish.PacketsShown));
        if (inOrder.Length <= shown + 1) return;
        var folded = inOrder[shown..];
        var box = new Box(lot.Id, folded, wish);
        foreach (var packet in folded) boxOf[packet.Id] = box;
    }

    // A blend's stems show what each parent gave. A packet's shows what part of the lot went into it, since all of a packet is of its lot.
    private static double Share(LineageGraph graph, LineageEdge[] edges)
    {
        var first = edges[0];
        if (edges.Length == 1 && graph[first.Child].Kind != NodeKind.Packet) return first.Share;
        var sum = graph.Below(first.Parent).Sum(edge => edge.SeedCount);
        return sum > 0 ? Math.Clamp((double)edges.Sum(edge => edge.SeedCount) / sum, 0, 1) : 0;
    }
}

/// <summary>What is drawn as one node.</summary>
internal sealed class Box
{
    public Box(LineageNode node, PictureWish wish)
    {
        Id = node.Id;
        Number = node.Id.Value;
        Kind = node.Kind;
        Label = node.Label;
        On = node.On;
        Mark = wish.Marks.GetValueOrDefault(node.Id);
        IsHere = node.Id == wish.Here;
        InDoubt = wish.InDoubt.Contains(node.Id);
        Folded = [];
    }

    public Box(NodeId lot, IReadOnlyList<LineageNode> packets, PictureWish wish)
    {
        Id = lot;
        Number = packets.Max(packet => packet.Id.Value);
        Kind = NodeKind.Packet;
        Label = string.Create(CultureInfo.InvariantCulture, $"{packets.Count} more");
        On = packets.Min(packet => packet.On);
        Mark = packets.Max(packet => wish.Marks.GetValueOrDefault(packet.Id));
        InDoubt = packets.Any(packet => wish.InDoubt.Contains(packet.Id));
        Folded = packets.Select(packet => packet.Id).ToArray();
    }

    public NodeId Id { get; }

    public long Number { get; }

    public NodeKind Kind { get; }

    public string Label { get; }

    public DateOnly On { get; }

    public NodeMark Mark { get; }

    public bool IsHere { get; }

    public bool InDoubt { get; }

    public IReadOnlyList<NodeId> Folded { get; }

    public List<Link> Above { get; } = [];

    public List<Link> Below { get; } = [];

    public Strand? Strand { get; set; }

    /// <summary>Place along time: px when wide, row when narrow.</summary>
    public double Along { get; set; }

    /// <summary>A packet that nothing was made of: it hangs on its lot.</summary>
    public bool IsLeaf => Kind == NodeKind.Packet && Below.Count == 0 && Above.Count == 1;
}

/// <summary>What is drawn as one stem.</summary>
internal sealed record Link(Box From, Box To, double Share);

/// <summary>Boxes that lie on one line, one after the other.</summary>
internal sealed class Strand(int number)
{
    public int Number { get; } = number;

    public List<Box> Boxes { get; } = [];

    /// <summary>Place across time, in lanes.</summary>
    public double Lane { get; set; }

    /// <summary>Where its line begins and ends along time: from the parents it leaves to the children it reaches.</summary>
    public double Start => Boxes[0].Along;

    public double End => Boxes[^1].Along;
}
