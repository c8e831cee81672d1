namespace LibraryDesk.Desk.Words;

/// <summary>Names of varieties as they are printed: in single quotes, an apostrophe typed straight shown curly. What is stored stays as typed.</summary>
public static class Quotes
{
    /// <summary>The name in quotes.</summary>
    public static string Of(string? name) => $"‘{Inside(name)}’";

    /// <summary>The name as it stands between quotes that the sentence brings itself.</summary>
    public static string Inside(string? name) => (name ?? "").Replace('\'', '’');
}
