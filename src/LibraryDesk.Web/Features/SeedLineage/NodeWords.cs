using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Web.Features.SeedLineage.SeedLineageText;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>The words of the drawing: beside a node for who sees it, and the whole of it for who hears it.</summary>
internal static class NodeWords
{
    private const int MostNarrow = 19;
    private const int MostWide = 24;

    /// <summary>The one or two lines that stand beside a node.</summary>
    public static PictureWords Beside(LineageStory story, PictureDirection direction, NodeId node, PictureFolding folding, int count)
    {
        switch (folding)
        {
            case PictureFolding.Packets: return new(Say[$"{count} more"], "");
            case PictureFolding.Before: return new(Say[$"{count} earlier"], "");
            case PictureFolding.After: return new(Say[$"{count} later"], "");
        }

        var kind = story.Graph[node].Kind;
        var first = node == story.Here ? This(kind) : Place(story, node);
        if (direction == PictureDirection.Narrow) return new(first, Short(story.NoteOf(node), MostNarrow));
        return new(first, kind == NodeKind.Accession ? Short(story.NoteOf(node), MostWide) : "");
    }

    /// <summary>All that is to be said of a node. It begins with the words in sight (WCAG 2.2, 2.5.3), so that who speaks to the page can say what they see.</summary>
    public static string Said(LineageStory story, PictureNode node)
    {
        var seen = string.Join(' ', node.Lines.Select(line => line.Text));
        if (node.Folding != PictureFolding.None) return Folded(story, node, seen);
        var note = story.NoteOf(node.Id);
        string[] parts =
        [
            seen,
            node.IsHere ? Say[$"{Place(story, node.Id)}, you are here"] : LineageStory.WordOf(node.Kind).ToLower(CultureInfo.CurrentCulture),
            SeedWords.Day(node.On),
            node.Lines[^1].Text == note ? "" : note,
            node.Mark switch { NodeMark.Fits => Say["plants of it fit"], NodeMark.Off => Say["a plant of it is off"], _ => "" },
            node.InDoubt ? Say["In doubt"].ToLower(CultureInfo.CurrentCulture) : "",
        ];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    private static string Folded(LineageStory story, PictureNode node, string seen) => node.Folding switch
    {
        PictureFolding.Before => Say[$"{seen}, of what {Place(story, node.Id)} came from: show them"],
        PictureFolding.After => Say[$"{seen}, of what was made of {Place(story, node.Id)}: show them"],
        _ => Say[$"{seen}, packets of {Place(story, node.Id)}: show them"],
    };

    private static string Place(LineageStory story, NodeId node) => SeedWords.Place(story.Graph[node].Kind, story.Graph[node].Label);

    private static string This(NodeKind kind) => kind switch
    {
        NodeKind.Accession => Say["This accession"],
        NodeKind.Lot => Say["This lot"],
        NodeKind.Packet => Say["This packet"],
        _ => Say["This grow-out"],
    };

    private static string Short(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";
}
