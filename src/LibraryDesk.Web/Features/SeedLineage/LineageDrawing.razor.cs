using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Web.Shared.Odds;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using static LibraryDesk.Web.Features.SeedLineage.SeedLineageText;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Draws a laid-out lineage as SVG.</summary>
public sealed partial class LineageDrawing
{
    private const double NarrowWidth = 358;

    // The section's own width on a laptop, within its frame.
    private const double WideWidth = 1112;

    private LineagePicture _narrow = default!;
    private LineagePicture? _wide;
    private LineageFolds _folds = LineageFolds.None;

    /// <summary>What is drawn.</summary>
    [Parameter, EditorRequired] public required LineageStory Story { get; set; }

    /// <summary>How the reader looks at it.</summary>
    [Parameter, EditorRequired] public required LineageLook Look { get; set; }

    /// <summary>True to draw it top to bottom at every width.</summary>
    [Parameter] public bool NarrowOnly { get; set; }

    // A picture wider than its frame begins to scroll at the end where this page's node stands.
    private bool StartsAtEnd => _wide is { } wide && wide.Nodes.FirstOrDefault(node => node.IsHere) is { } here && here.X > wide.Width / 2;

    protected override void OnParametersSet()
    {
        _wide = NarrowOnly ? null : Story.Draw(Look, PictureDirection.Wide, WideWidth);
        _folds = Story.FoldsOf(Look);
        _narrow = Story.Draw(Look, PictureDirection.Narrow, NarrowWidth);
    }

    private RenderFragment Svg(LineagePicture picture) => builder =>
    {
        builder.OpenElement(0, "svg");
        // A wide picture keeps its size and scrolls in its frame; a narrow one fills the column.
        builder.AddAttribute(1, "class", picture.Direction == PictureDirection.Wide ? "lineage wide" : "lineage");
        builder.AddAttribute(6, "width", picture.Direction == PictureDirection.Wide ? N(picture.Width) : null);
        builder.AddAttribute(7, "height", picture.Direction == PictureDirection.Wide ? N(picture.Height) : null);
        builder.AddAttribute(2, "viewBox", $"0 0 {N(picture.Width)} {N(picture.Height)}");
        builder.AddAttribute(3, "role", "group");
        builder.AddAttribute(4, "aria-label", Say["Lineage drawn along the years; the list holds the same facts"]);
        builder.AddAttribute(5, "data-lineage", "");
        Years(builder, picture);
        foreach (var stem in picture.Stems) Stem(builder, stem);
        Halos(builder, picture);
        foreach (var node in picture.Nodes) Node(builder, picture, node);
        builder.CloseElement();
    };

    private static void Years(RenderTreeBuilder builder, LineagePicture picture)
    {
        foreach (var year in picture.Years)
        {
            builder.OpenRegion(10);
            if (picture.Direction == PictureDirection.Wide)
            {
                Path(builder, "grid", $"M{N(year.At)} 12V{N(picture.Height - 44)}");
                Words(builder, "year", year.At, picture.Height - 14, "middle", year.Year.ToString(CultureInfo.InvariantCulture));
            }
            else
            {
                Words(builder, "year", 4, year.At + 5, "start", year.Year.ToString(CultureInfo.InvariantCulture));
            }
            builder.CloseRegion();
        }
        if (picture.Direction == PictureDirection.Wide) Path(builder, "axis", $"M16 {N(picture.Height - 40)}H{N(picture.Width - 16)}");
    }

    private static void Stem(RenderTreeBuilder builder, PictureStem stem)
    {
        builder.OpenRegion(20);
        var dim = stem.IsDim ? " dim" : "";
        if (stem.Condition == StemCondition.InDoubt) Path(builder, "casing" + dim, stem.Path, stem.Width + 3.5);
        Path(builder, stem.Condition switch { StemCondition.InDoubt => "stem doubt", StemCondition.OffTypes => "stem off", _ => "stem" } + dim, stem.Path, stem.Width);
        builder.CloseRegion();
    }

    // A halo of the words of a link would cut the line under them, so it lies beneath, apart from the link.
    private void Halos(RenderTreeBuilder builder, LineagePicture picture)
    {
        builder.OpenRegion(25);
        builder.OpenElement(26, "g");
        builder.AddAttribute(27, "aria-hidden", "true");
        foreach (var line in picture.Nodes.Where(node => HrefOf(node) is not null).SelectMany(node => node.Lines.Where(line => !line.IsSecond)))
        {
            Words(builder, "halo", line.X, line.Y, line.IsCentred ? "middle" : "start", line.Text);
        }
        builder.CloseElement();
        builder.CloseRegion();
    }

    private string? HrefOf(PictureNode node) => node.Folding != PictureFolding.None ? Look.Open(node, _folds).Address : node.IsHere ? null : Story.HrefOf(node.Id);

    private void Node(RenderTreeBuilder builder, LineagePicture picture, PictureNode node)
    {
        var href = HrefOf(node);
        var isCentre = node.Folding == PictureFolding.None && node.Id == Look.Focus;
        var number = node.Id.Value.ToString(CultureInfo.InvariantCulture);
        builder.OpenRegion(30);
        builder.OpenElement(31, href is null ? "g" : "a");
        builder.AddAttribute(32, "class", node.IsDim ? "node dim" : isCentre ? "node centre" : "node");
        builder.AddAttribute(33, "href", href);
        builder.AddAttribute(34, "tabindex", href is null ? "0" : null);
        builder.AddAttribute(35, "role", href is null ? "img" : null);
        builder.AddAttribute(36, "aria-label", NodeWords.Said(Story, node));
        builder.AddAttribute(37, "data-key", node.Key);
        builder.AddAttribute(38, "data-parent", node.Keys.Parent);
        builder.AddAttribute(39, "data-child", node.Keys.Child);
        builder.AddAttribute(40, "data-before", node.Keys.Before);
        builder.AddAttribute(41, "data-after", node.Keys.After);
        if (node.Folding == PictureFolding.None)
        {
            builder.AddAttribute(42, "id", (picture.Direction == PictureDirection.Wide ? "w-" : "n-") + number);
            builder.AddAttribute(43, "data-at", number);
        }
        Reach(builder, picture, node);
        Shape(builder, node);
        Label(builder, picture, node);
        builder.CloseElement();
        builder.CloseRegion();
    }

    private static void Shape(RenderTreeBuilder builder, PictureNode node)
    {
        var (x, y) = (node.X, node.Y);
        var tone = node.InDoubt ? "doubted" : "sound";
        builder.OpenRegion(50);
        switch (node.Kind)
        {
            case var _ when node.Folding is PictureFolding.Before or PictureFolding.After:
                Path(builder, node.Mark == NodeMark.Off ? "n off" : "n tag", Pill(x, y));
                Path(builder, $"lines {tone}", Plus(x, y));
                break;
            case NodeKind.Accession:
                Circle(builder, $"n {tone}{(node.IsHere ? " here" : "")}", x, y, 13);
                Path(builder, $"seed {tone}", SeedShape.Path, transform: $"translate({N(x - 8)} {N(y - 8.5)}) scale(0.9)");
                break;
            case NodeKind.Lot when node.IsHere:
                Path(builder, "frame", $"M{N(x - 18)} {N(y - 15)}h36v30h-36z");
                Path(builder, "solid", $"M{N(x - 14)} {N(y - 11)}h28v22h-28z");
                Path(builder, "lines inverse", $"M{N(x - 7)} {N(y - 3)}h14M{N(x - 7)} {N(y + 4)}h9");
                break;
            case NodeKind.Lot:
                Path(builder, $"n {tone}", $"M{N(x - 14)} {N(y - 11)}h28v22h-28z");
                Path(builder, $"lines {tone}", $"M{N(x - 7)} {N(y - 3)}h14M{N(x - 7)} {N(y + 4)}h9");
                break;
            case NodeKind.GrowOut:
                Path(builder, $"n {tone}", $"M{N(x)} {N(y + 11)}C{N(x - 14)} {N(y + 4)} {N(x - 12)} {N(y - 8)} {N(x)} {N(y - 13)}C{N(x + 12)} {N(y - 8)} {N(x + 14)} {N(y + 4)} {N(x)} {N(y + 11)}Z");
                Path(builder, $"lines {tone}", $"M{N(x)} {N(y + 11)}V{N(y - 4)}");
                break;
            default:
                if (node.IsHere) Path(builder, "frame", $"M{N(x - 14)} {N(y - 14)}h28v28h-28z");
                Path(builder, node.IsHere ? "solid" : node.Mark == NodeMark.Off ? "n off" : "n tag", $"M{N(x - 10)} {N(y - 10)}H{N(x + 4)}L{N(x + 10)} {N(y - 4)}V{N(y + 10)}H{N(x - 10)}Z");
                if (node.Mark == NodeMark.Fits) Path(builder, "tick", $"M{N(x - 4)} {N(y + 1)}l3 4l6 -8");
                if (node.Mark == NodeMark.Off) Path(builder, "cross", $"M{N(x - 4)} {N(y - 4)}l8 9M{N(x + 4)} {N(y - 4)}l-8 9");
                break;
        }
        builder.CloseRegion();
    }

    private static void Label(RenderTreeBuilder builder, LineagePicture picture, PictureNode node)
    {
        builder.OpenRegion(80);
        if (picture.Direction == PictureDirection.Narrow) Path(builder, "lead", $"M{N(node.X + 20)} {N(node.Y)}H{N(node.Lines[0].X - 6)}");
        foreach (var line in node.Lines)
        {
            builder.OpenRegion(90);
            // The space keeps the two lines two words for who reads them without seeing them.
            if (line.IsSecond) builder.AddContent(91, " ");
            Words(builder, line.IsSecond ? "under" : "label", line.X, line.Y, line.IsCentred ? "middle" : "start", line.Text);
            builder.CloseRegion();
        }
        builder.CloseRegion();
    }

    // A tap on a small shape should not have to be exact: 44 px around each node answer, on a phone its whole row.
    private static void Reach(RenderTreeBuilder builder, LineagePicture picture, PictureNode node)
    {
        if (picture.Direction == PictureDirection.Wide)
        {
            Circle(builder, "reach", node.X, node.Y, 22);
            return;
        }
        var (left, half) = (node.X - 22, LineageLayout.RowHeight / 2);
        Path(builder, "reach", $"M{N(left)} {N(node.Y - half)}H{N(picture.Width)}V{N(node.Y + half)}H{N(left)}Z");
    }

    // What is folded away: a tag without a corner, and a plus.
    private static string Pill(double x, double y) => $"M{N(x - 8)} {N(y - 10)}h16a10 10 0 0 1 0 20h-16a10 10 0 0 1 0 -20Z";

    private static string Plus(double x, double y) => $"M{N(x - 6)} {N(y)}h12M{N(x)} {N(y - 6)}v12";

    private static void Path(RenderTreeBuilder builder, string cssClass, string data, double? width = null, string? transform = null)
    {
        builder.OpenRegion(100);
        builder.OpenElement(101, "path");
        builder.AddAttribute(102, "class", cssClass);
        builder.AddAttribute(103, "d", data);
        builder.AddAttribute(104, "stroke-width", width is { } px ? N(px) : null);
        builder.AddAttribute(105, "transform", transform);
        builder.CloseElement();
        builder.CloseRegion();
    }

    private static void Circle(RenderTreeBuilder builder, string cssClass, double x, double y, double radius)
    {
        builder.OpenRegion(110);
        builder.OpenElement(111, "circle");
        builder.AddAttribute(112, "class", cssClass);
        builder.AddAttribute(113, "cx", N(x));
        builder.AddAttribute(114, "cy", N(y));
        builder.AddAttribute(115, "r", N(radius));
        builder.CloseElement();
        builder.CloseRegion();
    }

    private static void Words(RenderTreeBuilder builder, string cssClass, double x, double y, string anchor, string words)
    {
        builder.OpenRegion(120);
        builder.OpenElement(121, "text");
        builder.AddAttribute(122, "class", cssClass);
        builder.AddAttribute(123, "x", N(x));
        builder.AddAttribute(124, "y", N(y));
        builder.AddAttribute(125, "text-anchor", anchor);
        builder.AddContent(126, words);
        builder.CloseElement();
        builder.CloseRegion();
    }

    private static string N(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);
}
