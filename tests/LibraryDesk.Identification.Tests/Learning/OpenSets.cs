using System.Globalization;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Identification.Tests.Learning;

/// <summary>
/// Open data sets as labelled plants. Zoo: Forsyth 1990. Soybean: Michalski and Chilausky 1980. Iris: Anderson 1935, Fisher 1936.
/// Cucurbita: Hernandez et al. 2023, characterisation of the US collections. Expected values stand in the SOURCE.md beside the files.
/// </summary>
internal static class OpenSets
{
    public static List<LabelledCase> Zoo() => Wide("identification/zoo.csv", "type", ["animal"]);

    public static List<LabelledCase> Soybean() => Wide("identification/soybean.csv", "Class", []);

    public static List<LabelledCase> Cucurbita()
    {
        var rows = ReferenceData.Table("identification/cucurbita-accessions.csv").Rows;
        return [.. rows.GroupBy(r => r[0]).Select(g => new LabelledCase(g.Key, g.First()[1], [.. g.Select(r => new LabelledScore(r[2], r[3]))]))];
    }

    /// <summary>Each length cut at its sorted positions 51 and 101.</summary>
    public static List<LabelledCase> IrisInThirds()
    {
        var (header, rows) = ReferenceData.Table("identification/iris.csv");
        var cuts = Enumerable.Range(0, 4).Select(c =>
        {
            var sorted = rows.Select(r => Number(r[c])).Order().ToList();
            return (Low: sorted[50], High: sorted[100]);
        }).ToList();
        return [.. rows.Select((r, i) => new LabelledCase($"{i}", r[4], [.. Enumerable.Range(0, 4).Select(c =>
            new LabelledScore(header[c], Number(r[c]) < cuts[c].Low ? "low" : Number(r[c]) < cuts[c].High ? "middle" : "high"))]))];
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static List<LabelledCase> Wide(string file, string label, string[] leftOut)
    {
        var (header, rows) = ReferenceData.Table(file);
        var at = Array.IndexOf(header, label);
        return [.. rows.Select((r, i) => new LabelledCase($"{i}", r[at], [.. Enumerable.Range(0, header.Length)
            .Where(c => c != at && !leftOut.Contains(header[c]) && r[c].Length > 0)
            .Select(c => new LabelledScore(header[c], r[c]))]))];
    }
}
