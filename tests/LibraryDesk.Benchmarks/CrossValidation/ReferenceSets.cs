using System.Globalization;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Benchmarks.CrossValidation;

/// <summary>Open data sets as labelled plants, read from the reference folder beside the repository; their sources stand in its SOURCE.md.</summary>
internal sealed class ReferenceSets(string folder)
{
    /// <summary>The sets, or null where no reference folder stands beside the repository.</summary>
    public static ReferenceSets? Find()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var folder = Path.Combine(at.FullName, "shared", "reference", "data", "identification");
            if (Directory.Exists(folder)) return new ReferenceSets(folder);
        }

        return null;
    }

    public List<LabelledCase> Zoo() => Wide("zoo.csv", "type", "animal");

    public List<LabelledCase> Soybean() => Wide("soybean.csv", "Class");

    public List<LabelledCase> Cucurbita() =>
        [.. Rows("cucurbita-accessions.csv").Skip(1).GroupBy(r => r[0]).Select(g => new LabelledCase(g.Key, g.First()[1], [.. g.Select(r => new LabelledScore(r[2], r[3]))]))];

    /// <summary>Each length cut at its sorted positions 51 and 101.</summary>
    public List<LabelledCase> IrisInThirds()
    {
        var rows = Rows("iris.csv");
        var cuts = Enumerable.Range(0, 4).Select(c => rows.Skip(1).Select(r => Number(r[c])).Order().ToList()).Select(s => (Low: s[50], High: s[100])).ToList();
        return [.. rows.Skip(1).Select((r, i) => new LabelledCase($"{i}", r[4], [.. cuts.Select((cut, c) =>
            new LabelledScore(rows[0][c], Number(r[c]) < cut.Low ? "low" : Number(r[c]) < cut.High ? "middle" : "high"))]))];
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private List<LabelledCase> Wide(string file, string label, params string[] leftOut)
    {
        var rows = Rows(file);
        var at = Array.IndexOf(rows[0], label);
        return [.. rows.Skip(1).Select((r, i) => new LabelledCase($"{i}", r[at], [.. r.Select((state, c) => new LabelledScore(rows[0][c], state))
            .Where(s => s.State.Length > 0 && s.Trait != label && !leftOut.Contains(s.Trait))]))];
    }

    private List<string[]> Rows(string file) => [.. File.ReadLines(Path.Combine(folder, file)).Where(l => l.Length > 0).Select(l => l.Split(','))];
}
