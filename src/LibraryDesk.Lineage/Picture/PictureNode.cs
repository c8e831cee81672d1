using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Picture;

/// <summary>One node as drawn.</summary>
/// <param name="Id">The node; for folded packets the lot they are of, for a folded descent or ancestry the node it is of.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Label">Its code, or "n more".</param>
/// <param name="On">The day it came to be; the first of those folded.</param>
/// <param name="X">Centre, px from the left.</param>
/// <param name="Y">Centre, px from the top.</param>
/// <param name="Mark">What plants of it showed; for folded packets off if any is.</param>
/// <param name="IsHere">True for the node the page is about.</param>
/// <param name="InDoubt">True when its seed is in doubt.</param>
/// <param name="Folded">The nodes folded into it; empty for a node of its own.</param>
public sealed record PictureNode(
    NodeId Id,
    NodeKind Kind,
    string Label,
    DateOnly On,
    double X,
    double Y,
    NodeMark Mark,
    bool IsHere,
    bool InDoubt,
    IReadOnlyList<NodeId> Folded)
{
    /// <summary>A key that no other node of the picture has.</summary>
    public string Key => string.Create(CultureInfo.InvariantCulture, $"{Folding switch { PictureFolding.Packets => "more", PictureFolding.Before => "before", PictureFolding.After => "after", _ => "node" }}-{Id.Value}");

    /// <summary>What it stands for.</summary>
    public PictureFolding Folding { get; init; }

    /// <summary>True when the reader looks at another node that this one is no kin of.</summary>
    public bool IsDim { get; init; }

    /// <summary>The words beside it.</summary>
    public IReadOnlyList<PictureLine> Lines { get; init; } = [];

    /// <summary>Keys of the nodes that the arrow keys lead to: parent, first child, the sibling before and the sibling after; null where there is none.</summary>
    public PictureKeys Keys { get; init; } = new(null, null, null, null);
}

/// <summary>Where the arrow keys lead.</summary>
public sealed record PictureKeys(string? Parent, string? Child, string? Before, string? After);
