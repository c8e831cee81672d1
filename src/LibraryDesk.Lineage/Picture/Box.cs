using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Picture;

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
        Words = wish.Words?.Invoke(Id, PictureFolding.None, 0) ?? new(Label, "");
    }

    public Box(NodeId of, PictureFolding folding, IReadOnlyList<LineageNode> nodes, PictureWish wish)
    {
        Id = of;
        Number = folding == PictureFolding.After ? nodes.Min(node => node.Id.Value) : nodes.Max(node => node.Id.Value);
        Kind = NodeKind.Packet;
        Folding = folding;
        Label = string.Create(CultureInfo.InvariantCulture, $"{nodes.Count} more");
        On = nodes.Min(node => node.On);
        Mark = nodes.Max(node => wish.Marks.GetValueOrDefault(node.Id));
        InDoubt = nodes.Any(node => wish.InDoubt.Contains(node.Id));
        Folded = nodes.Select(node => node.Id).ToArray();
        Words = wish.Words?.Invoke(of, folding, nodes.Count) ?? new(Label, "");
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

    public PictureFolding Folding { get; }

    public PictureWords Words { get; }

    public List<Link> Above { get; } = [];

    public List<Link> Below { get; } = [];

    public Strand? Strand { get; set; }

    /// <summary>Place along time: px when wide, row when narrow.</summary>
    public double Along { get; set; }

    /// <summary>How far it and its words reach back and on along time, px; 0 when narrow.</summary>
    public double Back { get; set; }

    public double Onward { get; set; }

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
