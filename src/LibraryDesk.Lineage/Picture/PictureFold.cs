using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Picture;

/// <summary>Folds away what the reader does not want to see, and the packets of a lot that tell nothing, and gives what is left as boxes and links.</summary>
internal sealed class PictureFold
{
    public PictureFold(LineageGraph graph, PictureWish wish)
    {
        var boxOf = new Dictionary<NodeId, Box>();
        foreach (var fold in (wish.Folds ?? LineageFolds.None).Hide(graph, wish)) Fold(fold.Key, fold.Folding, fold.Nodes, wish, boxOf);
        foreach (var node in graph.Nodes)
        {
            if (boxOf.ContainsKey(node.Id)) continue;
            boxOf[node.Id] = new Box(node, wish);
            if (node.Kind == NodeKind.Lot) Fold(graph, wish, node, boxOf);
        }

        Boxes = boxOf.Values.Distinct().OrderBy(box => box.On).ThenBy(box => box.Number).ToArray();
        foreach (var links in graph.Edges.Where(edge => boxOf[edge.Parent] != boxOf[edge.Child]).GroupBy(edge => (From: boxOf[edge.Parent], To: boxOf[edge.Child])))
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
            .Where(node => node.Kind == NodeKind.Packet && !boxOf.ContainsKey(node.Id) && graph.Below(node.Id).Count == 0 && node.Id != wish.Here)
            .ToArray();

        // What showed something stays in sight longest; of the rest the oldest do.
        var inOrder = packets.OrderByDescending(packet => wish.Marks.GetValueOrDefault(packet.Id)).ThenBy(packet => packet.Id.Value).ToArray();
        var marked = inOrder.Count(packet => wish.Marks.GetValueOrDefault(packet.Id) != NodeMark.None);
        var shown = Math.Max(wish.PacketsShown - 1, Math.Min(marked, 2 * wish.PacketsShown));
        if (inOrder.Length <= shown + 1) return;
        Fold(lot.Id, PictureFolding.Packets, inOrder[shown..], wish, boxOf);
    }

    private static void Fold(NodeId of, PictureFolding folding, IReadOnlyList<LineageNode> nodes, PictureWish wish, Dictionary<NodeId, Box> boxOf)
    {
        var box = new Box(of, folding, nodes, wish);
        foreach (var node in nodes) boxOf[node.Id] = box;
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
