using System.Globalization;

namespace LibraryDesk.Identification.Guides;

/// <summary>How a library numbers its own versions of a guide.</summary>
public static class GuideVersion
{
    /// <summary>
    /// The number after <paramref name="basis"/> that is not taken yet. Guides that come with the desk are numbered year and count (2026.1); a library's own versions
    /// add a third number (2026.1.1), so that the two never meet.
    /// </summary>
    public static string After(string basis, IReadOnlyCollection<string> taken)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(taken);
        var parts = basis.Split('.');
        var isOwn = parts.Length > 2 && int.TryParse(parts[^1], NumberStyles.None, CultureInfo.InvariantCulture, out _);
        var stem = isOwn ? string.Join('.', parts[..^1]) : basis;
        for (var number = 1; ; number++)
        {
            var next = string.Create(CultureInfo.InvariantCulture, $"{stem}.{number}");
            if (!taken.Contains(next)) return next;
        }
    }
}
