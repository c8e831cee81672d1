using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Picture;

/// <summary>What the picture shows beyond the graph.</summary>
/// <param name="Here">The node the page is about: it is drawn solid, and never folded away.</param>
/// <param name="Marks">What plants of a node showed; absent means none determined.</param>
/// <param name="InDoubt">Nodes whose seed is in doubt: their stems are marigold.</param>
/// <param name="Direction">Which way time runs.</param>
/// <param name="Width">The width to fill, in px; a wide picture may come out wider when its nodes need it.</param>
/// <param name="PacketsShown">How many plain packets of one lot are drawn before the rest is folded into "n more"; 2 or more.</param>
/// <param name="Opened">Lots whose packets the reader unfolded.</param>
/// <param name="Folds">What else the reader folded away; null for nothing.</param>
/// <param name="Focus">The node whose kin alone is drawn in full; null to draw all so.</param>
/// <param name="Words">What stands beside a node, given its number, what was folded into it and how many; null for its code alone.</param>
public sealed record PictureWish(
    NodeId Here,
    IReadOnlyDictionary<NodeId, NodeMark> Marks,
    IReadOnlySet<NodeId> InDoubt,
    PictureDirection Direction,
    double Width,
    int PacketsShown = 5,
    IReadOnlySet<NodeId>? Opened = null,
    LineageFolds? Folds = null,
    NodeId? Focus = null,
    Func<NodeId, PictureFolding, int, PictureWords>? Words = null);

/// <summary>One or two short lines beside a node.</summary>
/// <param name="First">Its code.</param>
/// <param name="Second">A few words; empty for none.</param>
public sealed record PictureWords(string First, string Second);

/// <summary>What a node of the picture stands for.</summary>
public enum PictureFolding
{
    /// <summary>Itself.</summary>
    None,

    /// <summary>Plain packets of one lot.</summary>
    Packets,

    /// <summary>What one node's seed came from.</summary>
    Before,

    /// <summary>What was made of one node's seed.</summary>
    After,
}

/// <summary>What plants of a node showed.</summary>
public enum NodeMark
{
    /// <summary>No plant of it was determined.</summary>
    None,

    /// <summary>Plants of it fit the name.</summary>
    Fits,

    /// <summary>A plant of it does not.</summary>
    Off,
}

/// <summary>Which way time runs.</summary>
public enum PictureDirection
{
    /// <summary>Left to right on a true time axis, for wide screens and print.</summary>
    Wide,

    /// <summary>Top to bottom, one row a node in order of time, years at the left, for narrow screens.</summary>
    Narrow,
}
