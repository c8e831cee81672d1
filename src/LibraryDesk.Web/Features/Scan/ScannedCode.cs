namespace LibraryDesk.Web.Features.Scan;

/// <summary>What a scanner types or a person enters, brought down to the code in it.</summary>
public static class ScannedCode
{
    /// <summary>The code in an address that ends in /p/CODE or /lots/CODE; else the text as it came.</summary>
    public static string Read(string text)
    {
        var plain = text.Trim();
        foreach (var path in new[] { "/p/", "/lots/" })
        {
            var at = plain.LastIndexOf(path, StringComparison.OrdinalIgnoreCase);
            if (at < 0) continue;
            var rest = plain[(at + path.Length)..];
            var end = rest.AsSpan().IndexOfAny("/?#");
            return (end < 0 ? rest : rest[..end]).ToUpperInvariant();
        }
        return plain.ToUpperInvariant();
    }
}
