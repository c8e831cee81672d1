namespace LibraryDesk.Identification.Tests;

/// <summary>Published data sets that stand beside the repository and are read from there; tests that need them are skipped where they are absent.</summary>
internal static class ReferenceData
{
    /// <summary>The full path of a file, skipping the test where there is none.</summary>
    public static string Need(string file)
    {
        var path = Find(file);
        Skip.If(path is null, $"shared/reference/data/{file} does not stand beside the repository");
        return path!;
    }

    /// <summary>Rows of a CSV file without quotes, header left out.</summary>
    public static (string[] Header, List<string[]> Rows) Table(string file)
    {
        var lines = File.ReadAllLines(Need(file)).Where(l => l.Length > 0).Select(l => l.Split(',')).ToList();
        return (lines[0], lines[1..]);
    }

    private static string? Find(string file)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, "shared", "reference", "data", file);
            if (File.Exists(path)) return path;
        }

        return null;
    }
}
