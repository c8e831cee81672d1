using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Picture;

/// <summary>Invented lineages of hundreds of nodes: accessions, harvests, blends and packets over a dozen years. The same seed gives the same one.</summary>
internal sealed class RandomPedigree
{
    private readonly Random _random;
    private readonly List<LineageNode> _nodes = [];
    private readonly List<LineageEdge> _edges = [];
    private readonly List<NodeId> _lots = [];
    private readonly List<NodeId> _packets = [];
    private readonly Dictionary<NodeId, string> _notes = [];

    public RandomPedigree(int seed, int lots)
    {
        _random = new(seed);
        for (var year = 2012; _lots.Count < lots; year = Math.Min(2026, year + 1))
        {
            for (var made = 0; made < lots / 12; made++) Lot(year);
        }

        Graph = new(_nodes, _edges);
        Here = _lots[_random.Next(_lots.Count)];
    }

    public LineageGraph Graph { get; }

    public NodeId Here { get; }

    public IReadOnlyList<NodeId> Lots => _lots;

    public PictureWish Wish(PictureDirection direction, LineageFolds? folds = null, NodeId? focus = null) => new(
        Here, new Dictionary<NodeId, NodeMark>(), new HashSet<NodeId>(), direction, direction == PictureDirection.Wide ? 1120 : 358, Folds: folds, Focus: focus,
        Words: (node, folding, count) => folding == PictureFolding.None
            ? new(Graph[node].Label, direction == PictureDirection.Narrow ? Cut(_notes[node], 19) : Graph[node].Kind == NodeKind.Accession ? _notes[node] : "")
            : new($"{count} earlier", ""));

    private static string Cut(string text, int most) => text[..Math.Min(text.Length, most)];

    private void Lot(int year)
    {
        var chance = _random.Next(10);
        var parents = new List<NodeId>();
        if (chance < 2 && _lots.Count > 2) parents.AddRange(Enumerable.Range(0, _random.Next(2, 5)).Select(_ => _lots[_random.Next(_lots.Count)]).Distinct());
        else if (chance < 8 && _packets.Count > 0) parents.Add(Node(NodeKind.GrowOut, $"{_random.Next(2, 200)} plants", year, 4, _packets[_random.Next(_packets.Count)]));
        else parents.Add(Node(NodeKind.Accession, $"A{year % 100}-{_nodes.Count:000}", year, 2));
        var lot = Node(NodeKind.Lot, $"L{year % 100}-{_nodes.Count:000}", year, 10, [.. parents]);
        _lots.Add(lot);
        for (var packet = _random.Next(0, 9); packet > 0; packet--) _packets.Add(Node(NodeKind.Packet, $"Q{year % 100}-{_nodes.Count:0000}-N", year, 11, lot));
    }

    private NodeId Node(NodeKind kind, string label, int year, int month, params NodeId[] parents)
    {
        var node = new LineageNode(new(_nodes.Count + 1), kind, label, new DateOnly(year, month, _random.Next(1, 28)));
        _nodes.Add(node);
        _notes[node.Id] = new string('w', _random.Next(0, 25));
        foreach (var parent in parents) _edges.Add(new(parent, node.Id, 1.0 / parents.Length, 20));
        return node.Id;
    }
}
