using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>What growers say of peppers. Common practice, no source.</summary>
public sealed class PeppersByPracticeTests
{
    private static readonly string[] Domesticated = ["annuum", "baccatum", "chinense", "frutescens", "pubescens"];

    [Fact]
    public void Spots_in_the_flower_point_to_baccatum() => Assert.Equal("capsicum-baccatum", First("corolla_spots=green-yellow"));

    [Fact]
    public void Dark_seeds_decide_for_pubescens()
    {
        foreach (var other in Domesticated.Where(s => s != "pubescens"))
        {
            var table = Peppers.Reasons("seed_colour=black", "pubescens", other);
            Assert.Equal(ReasonWord.Decides, Reason.WordOf(table.TotalDecibans));
            Assert.True(table.TotalDecibans > 0);
        }
    }

    [Fact]
    public void Hairy_leaves_and_stems_with_a_purple_corolla_point_to_pubescens() =>
        Assert.Equal("capsicum-pubescens", First("stem_pubescence=dense; leaf_pubescence=dense; corolla_colour=purple"));

    [Fact]
    public void A_purple_corolla_without_hairs_points_to_annuum_before_pubescens()
    {
        var ranking = Peppers.Rank("stem_pubescence=absent; leaf_pubescence=absent; corolla_colour=purple", PublishedKeyPaths.Five, flat: true);
        double Of(string id) => ranking.Candidates.Single(c => c.Id == id).Probability;
        Assert.True(Of("capsicum-annuum") > Of("capsicum-pubescens"));
    }

    [Fact]
    public void Fruits_purple_when_unripe_point_to_annuum_or_chinense() =>
        Assert.Matches("annuum|chinense", First("fruit_colour_immature=purple"));

    [Fact]
    public void Upright_fruit_points_to_annuum_or_frutescens_and_stays_under_10_decibans()
    {
        Assert.Matches("annuum|frutescens", First("fruit_position=erect"));
        foreach (var (a, b) in Pairs()) Assert.True(Math.Abs(Peppers.Reasons("fruit_position=erect", a, b).TotalDecibans) < 10, $"{a} against {b}");
    }

    [Fact]
    public void Wrinkled_skin_leans_to_chinense() => Assert.Equal("capsicum-chinense", First("fruit_surface=wrinkled"));

    [Fact]
    public void A_floral_aroma_leans_to_chinense() => Assert.Equal("capsicum-chinense", First("fruit_aroma=distinct"));

    [Theory]
    [InlineData("red")]
    [InlineData("orange")]
    [InlineData("yellow")]
    public void Ripe_colour_stays_under_5_decibans(string colour)
    {
        foreach (var (a, b) in Pairs())
        {
            var decibans = Peppers.Reasons($"fruit_colour_mature={colour}", a, b).TotalDecibans;
            Assert.True(Math.Abs(decibans) < 5, $"{colour}: {a} against {b} {decibans:F1}");
        }
    }

    private static string First(string answers) => Peppers.Rank(answers, PublishedKeyPaths.Five, flat: true).Candidates[0].Id;

    private static IEnumerable<(string A, string B)> Pairs() =>
        from a in Domesticated from b in Domesticated where string.CompareOrdinal(a, b) < 0 select (a, b);
}
