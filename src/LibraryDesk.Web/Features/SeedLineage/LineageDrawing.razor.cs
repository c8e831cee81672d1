using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Web.Shared.Odds;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Draws a laid-out lineage as SVG.</summary>
public sealed partial class LineageDrawing
{
    private const double LabelColumn = 132;

    /// <summary>What is drawn.</summary>
    [Parameter, EditorRequired] public required LineageStory Story { get; set; }

    /// <summary>The page's address without a query, to which "n more" adds what to unfold.</summary>
    [Parameter, EditorRequired] public required string Here { get; set; }

    /// <summary>True to draw it top to bottom at every width.</summary>
    [Parameter] public bool NarrowOnly { get; set; }

    private RenderFragment Svg(LineagePicture picture) => builder =>
    {
        builder.OpenElement(0, "svg");
        builder.AddAttribute(1, "class", "lineage");
        builder.AddAttribute(2, "viewBox", $"0 0 {N(picture.Width)} {N(picture.Height)}");
        builder.AddAttribute(3, "role", "group");
        builder.AddAttribute(4, "aria-label", "Lineage drawn along the years; the list holds the same facts");
        builder.AddAttribute(5, "data-lineage", "");
        Years(builder, picture);
        foreach (var stem in picture.Stems) Stem(builder, stem);
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
        if (stem.Condition == StemCondition.InDoubt) Path(builder, "casing", stem.Path, stem.Width + 3.5);
        Path(builder, stem.Condition switch { StemCondition.InDoubt => "stem doubt", StemCondition.OffTypes => "stem off", _ => "stem" }, stem.Path, stem.Width);
        builder.CloseRegion();
    }

    private void Node(RenderTreeBuilder builder, LineagePicture picture, PictureNode node)
    {
        var href = node.Folded.Count > 0 ? $"{Here}?open={node.Id.Value.ToString(CultureInfo.InvariantCulture)}" : node.IsHere ? null : Story.HrefOf(node.Id);
        builder.OpenRegion(30);
        builder.OpenElement(31, href is null ? "g" : "a");
        builder.AddAttribute(32, "class", "node");
        builder.AddAttribute(33, "href", href);
        builder.AddAttribute(34, "tabindex", href is null ? "0" : null);
        builder.AddAttribute(35, "role", href is null ? "img" : null);
        builder.AddAttribute(36, "aria-label", Said(picture, node));
        builder.AddAttribute(37, "data-key", node.Key);
        builder.AddAttribute(38, "data-parent", node.Keys.Parent);
        builder.AddAttribute(39, "data-child", node.Keys.Child);
        builder.AddAttribute(40, "data-before", node.Keys.Before);
        builder.AddAttribute(41, "data-after", node.Keys.After);
        // A tap on a small shape should not have to be exact: 44 px around each node answer.
        builder.OpenElement(42, "circle");
        builder.AddAttribute(43, "class", "reach");
        builder.AddAttribute(44, "cx", N(node.X));
        builder.AddAttribute(45, "cy", N(node.Y));
        builder.AddAttribute(46, "r", "22");
        builder.CloseElement();
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

    private void Label(RenderTreeBuilder builder, LineagePicture picture, PictureNode node)
    {
        builder.OpenRegion(80);
        var (first, second) = Lines(picture, node);
        if (picture.Direction == PictureDirection.Narrow)
        {
            var x = picture.Width - LabelColumn;
            Path(builder, "lead", $"M{N(node.X + 20)} {N(node.Y)}H{N(x - 6)}");
            Words(builder, "label", x, second.Length > 0 ? node.Y - 3 : node.Y + 5, "start", first);
            if (second.Length > 0) Under(builder, x, node.Y + 14, "start", second);
        }
        else if (node.Kind == NodeKind.Packet && node.Keys.Child is null)
        {
            Words(builder, "label", node.X + 18, node.Y + 5, "start", first);
        }
        else
        {
            // What stands in the middle of a line is named above or below it, in turns, so that neighbours do not meet.
            var above = node.Kind is NodeKind.GrowOut or NodeKind.Packet;
            Words(builder, "label", node.X, above ? node.Y - 19 : node.Y + 29, "middle", first);
            if (second.Length > 0) Under(builder, node.X, node.Y + 45, "middle", second);
        }
        builder.CloseRegion();
    }

    // The space keeps the two lines two words for who reads them without seeing them.
    private static void Under(RenderTreeBuilder builder, double x, double y, string anchor, string text)
    {
        builder.AddContent(98, " ");
        Words(builder, "under", x, y, anchor, text);
    }

    /// <summary>The one or two lines that stand beside a node.</summary>
    private (string First, string Second) Lines(LineagePicture picture, PictureNode node)
    {
        var first = node.IsHere ? $"This {LineageStory.WordOf(node.Kind).ToLowerInvariant()}" : node.Label;
        if (node.Folded.Count > 0) return (first, "");
        if (picture.Direction == PictureDirection.Narrow) return (first, Short(Story.NoteOf(node.Id), 19));
        return (first, node.Kind == NodeKind.Accession ? Short(Story.NoteOf(node.Id), 24) : "");
    }

    // The name begins with the words in sight (WCAG 2.2, 2.5.3), so that who speaks to the page can say what they see.
    private string Said(LineagePicture picture, PictureNode node)
    {
        if (node.Folded.Count > 0) return $"{node.Label} packets, show them";
        var (first, second) = Lines(picture, node);
        var note = Story.NoteOf(node.Id);
        string[] parts =
        [
            $"{first} {second}".TrimEnd(),
            node.IsHere ? $"{node.Label}, you are here" : LineageStory.WordOf(node.Kind).ToLowerInvariant(),
            SeedWords.Day(node.On),
            second == note ? "" : note,
            node.Mark switch { NodeMark.Fits => "plants of it fit", NodeMark.Off => "a plant of it is off", _ => "" },
            node.InDoubt ? "in doubt" : "",
        ];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    private static string Short(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";

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
