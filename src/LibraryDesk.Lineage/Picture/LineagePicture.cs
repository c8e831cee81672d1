namespace LibraryDesk.Lineage.Picture;

/// <summary>The lineage laid out, ready to be drawn as SVG.</summary>
/// <param name="Direction">Which way time runs.</param>
/// <param name="Width">Width of the drawing in px.</param>
/// <param name="Height">Height of the drawing in px.</param>
/// <param name="Years">The axis.</param>
/// <param name="Stems">Stems, to be drawn first.</param>
/// <param name="Nodes">Nodes in order of time, which is also the reading order.</param>
public sealed record LineagePicture(
    PictureDirection Direction,
    double Width,
    double Height,
    IReadOnlyList<PictureYear> Years,
    IReadOnlyList<PictureStem> Stems,
    IReadOnlyList<PictureNode> Nodes);

/// <summary>One stem as drawn.</summary>
/// <param name="From">Key of the parent's node.</param>
/// <param name="To">Key of the child's node.</param>
/// <param name="Path">SVG path data: a cubic curve.</param>
/// <param name="Width">Stroke width in px: 3 + 9 x share.</param>
/// <param name="Condition">How it is drawn.</param>
/// <param name="IsDim">True when it leads to or from a dim node.</param>
public sealed record PictureStem(string From, string To, string Path, double Width, StemCondition Condition, bool IsDim = false);

/// <summary>One year on the axis.</summary>
/// <param name="Year">The year.</param>
/// <param name="At">Where it begins: px from the left when wide, from the top when narrow.</param>
public sealed record PictureYear(int Year, double At);

/// <summary>How a stem is drawn.</summary>
public enum StemCondition
{
    /// <summary>Sound: a full green line.</summary>
    Sound,

    /// <summary>In doubt: marigold with a casing.</summary>
    InDoubt,

    /// <summary>Off-types came up: beet, dashed.</summary>
    OffTypes,
}
