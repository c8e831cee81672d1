using System.Collections.Frozen;
using System.Reflection;
using System.Text;

namespace LibraryDesk.Web.Shared.Drawings;

/// <summary>
/// The desk's own line drawings by name, read once. They are put into the page itself: an image element could not take the
/// colour of the text around it nor the washes of the theme.
/// </summary>
public static class LineDrawings
{
    private const string Folder = "drawings/";
    private const string Ending = ".svg";

    private static readonly FrozenDictionary<string, string> _drawings = Read();

    /// <summary>Names of all drawings, sorted.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. _drawings.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The SVG element of a drawing without any label, or null when there is no such drawing.</summary>
    public static string? Find(string name) => _drawings.GetValueOrDefault(name);

    private static FrozenDictionary<string, string> Read()
    {
        var here = typeof(LineDrawings).Assembly;
        return here.GetManifestResourceNames()
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && n.EndsWith(Ending, StringComparison.Ordinal))
            .ToFrozenDictionary(n => n[Folder.Length..^Ending.Length], n => Bare(ReadText(here, n)), StringComparer.Ordinal);
    }

    private static string ReadText(Assembly here, string resource)
    {
        using var stream = here.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().Trim();
    }

    /// <summary>Takes the file's own label away: what a drawing says depends on where it stands.</summary>
    private static string Bare(string svg)
    {
        var end = svg.IndexOf('>', StringComparison.Ordinal);
        var head = svg[..end];
        foreach (var attribute in (string[])["role", "aria-label", "aria-hidden", "focusable"]) head = WithoutAttribute(head, attribute);
        return head + svg[end..];
    }

    private static string WithoutAttribute(string head, string attribute)
    {
        var from = head.IndexOf(" " + attribute + "=\"", StringComparison.Ordinal);
        if (from < 0) return head;
        var to = head.IndexOf('"', from + attribute.Length + 3);
        return head.Remove(from, to - from + 1);
    }
}
