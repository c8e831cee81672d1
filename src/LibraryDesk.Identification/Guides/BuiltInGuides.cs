using System.Reflection;

namespace LibraryDesk.Identification.Guides;

/// <summary>The crop guides that come with the desk.</summary>
public static class BuiltInGuides
{
    private const string Ending = ".guide.json";

    private static readonly Assembly Here = typeof(BuiltInGuides).Assembly;

    /// <summary>Ids of the guides, sorted.</summary>
    public static IReadOnlyList<string> Ids { get; } =
        [.. Here.GetManifestResourceNames().Where(n => n.EndsWith(Ending, StringComparison.Ordinal)).Select(n => n[..^Ending.Length]).Order(StringComparer.Ordinal)];

    /// <summary>The JSON text of a built-in guide as UTF-8, or null when there is no such guide.</summary>
    public static byte[]? Text(string id)
    {
        using var stream = Here.GetManifestResourceStream(id + Ending);
        if (stream is null) return null;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Reads a built-in guide; null when there is no such guide.</summary>
    public static GuideReading? Open(string id) => Text(id) is { } text ? GuideFile.Read(text) : null;
}
