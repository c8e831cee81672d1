using CsvHelper;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Cli.Guides;

/// <summary>Reads labelled score sheets: columns <c>case,taxon,trait,state</c>, one score a row.</summary>
internal static class LabelledFile
{
    private static readonly string[] Columns = ["case", "taxon", "trait", "state"];

    private static readonly CsvReaderOptions Options = new() { Separator = ',', TrimWhitespace = true, TrackLineNumbers = true, PoolStrings = true, MaxRecordSize = 1 << 20 };

    /// <summary>The cases in order of their first row; null after the faults were told on standard error.</summary>
    public static async Task<List<LabelledCase>?> ReadAsync(string path)
    {
        var faults = new List<string>();
        var cases = File.Exists(path) ? Read(path, faults) : [];
        if (!File.Exists(path)) faults.Add($"no file {path}");
        else if (faults.Count == 0 && cases.Count == 0) faults.Add("row 2: the file holds no plant");
        foreach (var fault in faults.Take(20)) await Console.Error.WriteLineAsync(fault);
        return faults.Count == 0 ? cases : null;
    }

    private static List<LabelledCase> Read(string path, List<string> faults)
    {
        var taxa = new Dictionary<string, (string Taxon, int Row)>();
        var scores = new Dictionary<string, List<LabelledScore>>();
        var order = new List<string>();
        try
        {
            using var reader = CsvReader.FromFile(path, Options);
            reader.ReadHeader();
            var at = Columns.Select(c => reader.TryGetFieldIndex(c, out var i) ? i : -1).ToArray();
            if (at.Contains(-1))
            {
                faults.Add("row 1: the first row must name the columns case,taxon,trait,state");
                return [];
            }

            while (reader.Read()) Take(reader, at, taxa, scores, order, faults);
        }
        catch (CsvFormatException e)
        {
            faults.Add($"row {Math.Max(1, e.LineNumber)}: {e.Message}");
        }

        return [.. order.Select(c => new LabelledCase(c, taxa[c].Taxon, scores[c]))];
    }

    private static void Take(CsvReader reader, int[] at, Dictionary<string, (string Taxon, int Row)> taxa, Dictionary<string, List<LabelledScore>> scores, List<string> order, List<string> faults)
    {
        var row = (int)reader.LineNumber;
        if (reader.FieldCount <= at.Max())
        {
            faults.Add($"row {row}: has {reader.FieldCount} fields; case, taxon, trait and state are needed");
            return;
        }

        var (name, taxon, trait, state) = (reader.GetString(at[0]), reader.GetString(at[1]), reader.GetString(at[2]), reader.GetString(at[3]));
        if (name.Length == 0 || taxon.Length == 0)
        {
            faults.Add($"row {row}: names no {(name.Length == 0 ? "case" : "taxon")}");
            return;
        }

        if (!taxa.TryGetValue(name, out var known))
        {
            taxa[name] = (taxon, row);
            scores[name] = [];
            order.Add(name);
        }
        else if (known.Taxon != taxon)
        {
            faults.Add($"row {row}: case {name} is {taxon} here and {known.Taxon} on row {known.Row}");
            return;
        }

        // An empty state is a trait that was not scored; a row with neither only names the plant.
        if (trait.Length > 0 && state.Length > 0) scores[name].Add(new LabelledScore(trait, state, row));
    }
}
