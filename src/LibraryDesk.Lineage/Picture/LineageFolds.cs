using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Picture;

/// <summary>
/// What a reader folded away: what the seed of some nodes came from, and what was made of the seed of others. What also hangs on a line that
/// is not folded stays in sight, and so does the way to the node the page is about.
/// </summary>
/// <param name="Before">Nodes whose ancestry is folded.</param>
/// <param name="After">Nodes whose descent is folded.</param>
public sealed record LineageFolds(IReadOnlySet<NodeId> Before, IReadOnlySet<NodeId> After)
{
    /// <summary>Nothing folded.</summary>
    public static LineageFolds None { get; } = new(new HashSet<NodeId>(), new HashSet<NodeId>());

    /// <summary>
    /// Folds that leave at most so many nodes in sight, as far around the page's own node as there is room; none when all have room. One
    /// step around it is always shown.
    /// </summary>
    public static LineageFolds For(LineageGraph graph, PictureWish wish, int most)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(wish);
        if (!graph.Has(wish.Here) || Count(graph, wish, None) <= most) return None;
        var up = Steps(wish.Here, node => graph.Above(node).Select(edge => edge.Parent));
        var down = Steps(wish.Here, node => graph.Below(node).Select(edge => edge.Child));
        LineageFolds At(int steps) => new(
            up.Where(step => step.Value == steps && graph.Above(step.Key).Count > 0).Select(step => step.Key).ToHashSet(),
            down.Where(step => step.Value == steps && graph.Below(step.Key).Count > 0).Select(step => step.Key).ToHashSet());

        // The further out, the more is in sight: the furthest that still has room.
        var (near, far) = (1, up.Values.Concat(down.Values).Max());
        while (near < far)
        {
            var middle = (near + far + 1) / 2;
            if (Count(graph, wish, At(middle)) <= most) near = middle;
            else far = middle - 1;
        }

        return At(near);
    }

    /// <summary>The nodes that go out of sight, by the node they are folded into.</summary>
    internal IEnumerable<(NodeId Key, PictureFolding Folding, IReadOnlyList<LineageNode> Nodes)> Hide(LineageGraph graph, PictureWish wish)
    {
        if (Before.Count + After.Count == 0) return [];
        var kept = new[] { wish.Here, wish.Focus ?? wish.Here }.Where(graph.Has).ToArray();
        var way = kept.SelectMany(node => graph.Ancestors(node).Select(above => above.Id).Append(node)).ToHashSet();
        var after = Hidden(graph.Nodes, After, way, node => graph.Above(node).Select(edge => edge.Parent), owners => owners.Max());

        way = kept.SelectMany(node => graph.Descendants(node).Select(below => below.Id).Append(node)).Concat(after.Keys).Concat(After).ToHashSet();
        var before = Hidden(graph.Nodes.Reverse(), Before, way, node => graph.Below(node).Select(edge => edge.Child), owners => owners.Min());
        return Groups(graph, after, PictureFolding.After).Concat(Groups(graph, before, PictureFolding.Before));
    }

    // A node goes when all that lead to it are folded or gone. Where several folds lead to it, it goes into the one that lies furthest along,
    // so that folds never stand in a circle.
    private static Dictionary<NodeId, long> Hidden(IEnumerable<LineageNode> inOrder, IReadOnlySet<NodeId> folded, HashSet<NodeId> kept, Func<NodeId, IEnumerable<NodeId>> from, Func<IEnumerable<long>, long> furthest)
    {
        var owners = new Dictionary<NodeId, long>();
        foreach (var node in inOrder)
        {
            if (kept.Contains(node.Id)) continue;
            var leading = from(node.Id).ToArray();
            if (leading.Length == 0 || !leading.All(one => folded.Contains(one) || owners.ContainsKey(one))) continue;
            owners[node.Id] = furthest(leading.Select(one => owners.GetValueOrDefault(one, one.Value)));
        }

        return owners;
    }

    private static IEnumerable<(NodeId Key, PictureFolding Folding, IReadOnlyList<LineageNode> Nodes)> Groups(LineageGraph graph, Dictionary<NodeId, long> owners, PictureFolding folding) =>
        owners.GroupBy(hidden => hidden.Value).Select(group => (new NodeId(group.Key), folding, (IReadOnlyList<LineageNode>)[.. group.Select(hidden => graph[hidden.Key])]));

    private static int Count(LineageGraph graph, PictureWish wish, LineageFolds folds) => new PictureFold(graph, wish with { Folds = folds }).Boxes.Count;

    private static Dictionary<NodeId, int> Steps(NodeId here, Func<NodeId, IEnumerable<NodeId>> next)
    {
        var steps = new Dictionary<NodeId, int> { [here] = 0 };
        var open = new Queue<NodeId>([here]);
        while (open.TryDequeue(out var node))
        {
            foreach (var further in next(node))
            {
                if (steps.TryAdd(further, steps[node] + 1)) open.Enqueue(further);
            }
        }

        return steps;
    }
}
