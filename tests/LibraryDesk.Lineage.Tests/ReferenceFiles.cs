namespace LibraryDesk.Lineage.Tests;

/// <summary>The reference data beside the repository. It is read from there and never copied; tests that need it are skipped, and say so, where it is absent.</summary>
internal static class ReferenceFiles
{
    public static string Find(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            foreach (var root in new[] { "shared/reference/data", "../shared/reference/data" })
            {
                var path = Path.Combine(folder.FullName, root, name);
                if (File.Exists(path)) return path;
            }
        }

        Skip.If(true, $"The reference file {name} is not beside the repository.");
        return "";
    }

    /// <summary>The rows of a CSV file by column name. Quotes are understood.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Csv(string name)
    {
        var lines = File.ReadAllLines(Find(name));
        var header = Split(lines[0]);
        return lines.Skip(1).Where(line => line.Length > 0)
            .Select(line => (IReadOnlyDictionary<string, string>)header.Zip(Split(line)).ToDictionary(cell => cell.First, cell => cell.Second))
            .ToArray();
    }

    private static List<string> Split(string line)
    {
        var cells = new List<string>();
        var cell = new System.Text.StringBuilder();
        var quoted = false;
        foreach (var character in line)
        {
            if (character == '"') quoted = !quoted;
            else if (character == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else cell.Append(character);
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
