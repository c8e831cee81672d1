using LibraryDesk.Desk.Growing;

namespace LibraryDesk.Desk.Tests.Growing;

public sealed class GrowingFactsTests
{
    [Fact]
    public void A_species_with_rows_of_its_own_uses_them()
    {
        var ripe = GrowingFacts.For("capsicum-pubescens", "days_transplant_to_ripe");

        Assert.NotNull(ripe);
        Assert.Equal("capsicum-pubescens", ripe.From);
        Assert.Equal("120 to 180 days", Assert.Single(ripe.Facts).Figure);
    }

    [Fact]
    public void A_species_without_a_row_takes_its_genus()
    {
        var depth = GrowingFacts.For("capsicum-annuum", "sowing_depth_mm");

        Assert.NotNull(depth);
        Assert.Equal("capsicum", depth.From);
        Assert.Equal("6 mm", Assert.Single(depth.Facts).Figure);
    }

    [Fact]
    public void What_holds_for_all_crops_comes_last()
    {
        Assert.Equal("all", GrowingFacts.For("capsicum-annuum", "drying_condition")?.From);
        Assert.Empty(GrowingFacts.For("solanum-dulcamara"));
    }

    [Fact]
    public void Sources_that_differ_stand_side_by_side()
    {
        var share = GrowingFacts.For("capsicum-annuum", "isolation_share_m");

        Assert.NotNull(share);
        Assert.Equal(["46 m", "183 m"], share.Facts.Select(f => f.Figure!));
        Assert.Equal(["sweet", "hot"], share.Facts.Select(f => f.Kind!));
    }

    // 7 CFR 201.31 (59 FR 64491, 1994): least germination of pepper seed in the United States is 55 per cent.
    [Fact]
    public void Pepper_germination_has_the_figure_of_the_us_rule()
    {
        var label = GrowingFacts.For("capsicum-annuum", "label_germination_percent");

        Assert.Contains(label!.Facts, f => f.Figure == "55 %" && f.Source.Contains("201.31", StringComparison.Ordinal));
    }

    // Harrington & Minges 1954 in Knott's Handbook: pepper comes up in 8 days at 25-30 degrees and in 25 days at 15.
    [Fact]
    public void Pepper_emergence_has_the_figures_of_the_handbook_table()
    {
        var days = Assert.Single(GrowingFacts.For("capsicum-annuum", "days_to_emerge")!.Facts);

        Assert.Equal((8d, 25d), (days.Low, days.High));
        Assert.Contains("Harrington & Minges 1954", days.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fact_says_something_and_where_it_is_from()
    {
        Assert.All(GrowingFacts.All, fact =>
        {
            Assert.False(string.IsNullOrWhiteSpace(fact.Source));
            Assert.False(string.IsNullOrWhiteSpace(fact.Basis));
            Assert.False(fact.Figure is null && fact.Statement is null);
            Assert.True(fact.Low is null || fact.High is null || fact.Low <= fact.High);
        });
    }

    [Theory]
    [InlineData("capsicum-chinense")]
    [InlineData("cucurbita-pepo")]
    [InlineData("phaseolus-vulgaris")]
    [InlineData("brassica-rapa")]
    public void A_crop_of_the_library_has_what_a_seed_saver_asks_first(string taxon)
    {
        var topics = GrowingFacts.For(taxon).Select(t => t.Id).ToHashSet();

        Assert.Superset(
            new HashSet<string> { "sowing_depth_mm", "days_to_emerge", "isolation_home_m", "plants_maintain", "ripe_sign", "clean_method", "storage_years_home", "breeding_system" },
            topics);
    }

    [Fact]
    public void Topics_come_in_the_order_a_grower_meets_them()
    {
        var groups = GrowingFacts.For("capsicum-annuum").Select(t => t.Group).Distinct().ToList();

        Assert.Equal(["Sowing", "Growing", "Crossing", "Keeping it apart", "How many plants", "Saving the seed", "Storing", "Seed health"], groups);
    }
}
