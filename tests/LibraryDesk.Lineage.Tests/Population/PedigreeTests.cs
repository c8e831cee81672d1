using System.Globalization;
using System.Text.Json;
using LibraryDesk.Lineage.Population;

namespace LibraryDesk.Lineage.Tests.Population;

/// <summary>Against published pedigrees and figures; each file names its papers in ../reference/data/pedigree/SOURCE.md.</summary>
public class PedigreeTests
{
    // Mrode 2005 table 2.1; Wray 1990; Fernando & Grossman 1990 table 1; Gulisija & Crow 2007; selfing, sibs and cousins after Falconer & Mackay 1996.
    [SkippableFact]
    public void The_small_pedigrees_have_their_published_inbreeding()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(ReferenceFiles.Find("pedigree/small-pedigrees.json")));
        foreach (var small in file.RootElement.GetProperty("small_pedigrees").EnumerateArray())
        {
            var pedigree = new Pedigree(small.GetProperty("rows").EnumerateArray().Select(row => new PedigreeRow(row[0].GetString()!, Known(row[1].GetString()), Known(row[2].GetString()))));
            foreach (var expected in small.GetProperty("F").EnumerateObject()) Assert.Equal(expected.Value.GetDouble(), pedigree.Inbreeding(expected.Name), 12);
        }
    }

    // Mrode 2005: the relationship matrix is twice the coancestries.
    [SkippableFact]
    public void The_first_pedigree_has_its_published_relationship_matrix()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(ReferenceFiles.Find("pedigree/small-pedigrees.json")));
        var first = file.RootElement.GetProperty("small_pedigrees")[0];
        var pedigree = new Pedigree(first.GetProperty("rows").EnumerateArray().Select(row => new PedigreeRow(row[0].GetString()!, Known(row[1].GetString()), Known(row[2].GetString()))));
        var matrix = first.GetProperty("relationship_matrix");
        for (var one = 0; one < 6; one++)
        {
            for (var other = 0; other < 6; other++) Assert.Equal(matrix[one][other].GetDouble(), 2 * pedigree.Coancestry(Name(one), Name(other)), 12);
        }

        static string Name(int at) => (at + 1).ToString(CultureInfo.InvariantCulture);
    }

    // Berra, Alvarez & Ceballos 2010, BioScience 60:376-383.
    [SkippableFact]
    public void The_Darwin_and_Wedgwood_tree_has_its_published_inbreeding()
    {
        var pedigree = new Pedigree(ReferenceFiles.Csv("pedigree/darwin.csv").Select(row => new PedigreeRow(row["id"], Known(row["dam"]), Known(row["sire"]))));
        foreach (var expected in Expected("darwin").EnumerateObject()) Assert.Equal(expected.Value.GetDouble(), pedigree.Inbreeding(expected.Name), 6);
    }

    // López-Cortegano et al. 2021 studbooks; figures of the package that ships them, recomputed (SOURCE.md).
    [SkippableTheory]
    [InlineData("atlas")]
    [InlineData("arrui")]
    [InlineData("dama")]
    public void A_studbook_has_its_published_inbreeding_founders_and_diversity(string name)
    {
        var rows = ReferenceFiles.Csv($"pedigree/{name}.csv");
        var expected = Expected(name);
        var pedigree = new Pedigree(rows.Select(row => new PedigreeRow(row["id"], Known(row["dam"]), Known(row["sire"]))));
        var inbreeding = rows.Select(row => pedigree.Inbreeding(row["id"])).ToArray();
        Assert.Equal(expected.GetProperty("sum_F").GetDouble(), inbreeding.Sum(), 4);
        Assert.Equal(expected.GetProperty("max_F").GetDouble(), inbreeding.Max(), 6);
        Assert.Equal(expected.GetProperty("F_of_last").GetDouble(), inbreeding[^1], 6);

        var target = rows.Where(row => row["target"] == "1").Select(row => row["id"]).ToArray();
        Assert.Equal(expected.GetProperty("target_animals").GetInt32(), target.Length);
        var founders = pedigree.FounderContributions(target);
        Assert.Equal(expected.GetProperty("founders_of_target").GetInt32(), founders.Count);
        Assert.Equal(expected.GetProperty("effective_founders_fe").GetDouble(), FounderFigures.EffectiveFounders(founders.Values), 5);
        Assert.Equal(expected.GetProperty("mean_kinship_of_target").GetDouble(), pedigree.MeanCoancestry(target), 5);
        if (!expected.TryGetProperty("founder_contribution", out var contributions)) return;
        foreach (var founder in contributions.EnumerateObject()) Assert.Equal(founder.Value.GetDouble(), founders[founder.Name], 4);
        Assert.Equal(expected.GetProperty("founder_genome_equivalents_exact").GetDouble(), FounderFigures.FounderGenomes(pedigree.MeanCoancestry(target)), 4);
    }

    [Fact]
    public void Somebody_who_is_their_own_ancestor_is_refused() =>
        Assert.Throws<ArgumentException>(() => new Pedigree([new("a", "b", null), new("b", "a", null)]));

    private static string? Known(string? parent) => parent is null or "" or "0" ? null : parent;

    private static JsonElement Expected(string name) => JsonDocument.Parse(File.ReadAllText(ReferenceFiles.Find("pedigree/expected.json"))).RootElement.GetProperty(name);
}
