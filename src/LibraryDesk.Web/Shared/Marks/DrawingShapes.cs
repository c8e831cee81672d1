using System.Collections.Frozen;
using System.Text.RegularExpressions;

namespace LibraryDesk.Web.Shared.Marks;

/// <summary>The drawings that ship with the desk, read once from the assembly.</summary>
public static partial class DrawingShapes
{
    private const string Prefix = "drawing:";

    private static readonly FrozenDictionary<string, DrawingShape> Shapes = Read();

    /// <summary>All names, in alphabetical order.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Shapes.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The drawing of this name, or null when the desk has none.</summary>
    public static DrawingShape? Find(string name) => Shapes.GetValueOrDefault(name);

    private static FrozenDictionary<string, DrawingShape> Read()
    {
        var assembly = typeof(DrawingShapes).Assembly;
        return assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .ToFrozenDictionary(name => name[Prefix.Length..], name =>
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
                var parts = Outer().Match(reader.ReadToEnd());
                return new DrawingShape(parts.Groups["box"].Value, parts.Groups["inner"].Value);
            });
    }

    [GeneratedRegex("""<svg[^>]*viewBox="(?<box>[^"]+)"[^>]*>(?<inner>.*)</svg>""", RegexOptions.Singleline)]
    private static partial Regex Outer();
}

/// <summary>One drawing: its coordinate box and the shapes inside.</summary>
public sealed record DrawingShape(string ViewBox, string Markup);
