using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Learning;

public sealed class DeterminedCountsTests
{
    private static readonly CompiledGuide Guide = SmallGuide.Compiled;

    private static PlantCounts Plant(string taxon, params IReadOnlyList<Answer> answers) => PlantCounts.Of(Guide, taxon, Evidence.OfKnown(Guide, answers));

    private static double Counted(CropGuide guide, string of, string? state, string trait = "spots") =>
        guide.Counts.Where(c => c.Of == of && c.Trait == trait && c.State == state).Sum(c => c.Count);

    /// <summary>By hand: a sure answer names the state with 0.99, so one plant counts 0.99 and 0.01; Parva nigra has no forms.</summary>
    [Fact]
    public void One_plant_counts_as_one()
    {
        var guide = new DeterminedCounts(Guide, [Plant("parva-nigra", Answer.Of("spots", "present"))]).Guide();
        Assert.Equal(0.99, Counted(guide, "parva-nigra", "present"), 4);
        Assert.Equal(0.01, Counted(guide, "parva-nigra", "absent"), 4);
    }

    /// <summary>
    /// By hand: the published rows are usually absent for tall plants (0.8 and the floor 0.002, so 0.9975 to 0.0025) and 0.1 to 0.9 for dwarfs. A plant with spots
    /// speaks P = 0.99 x 0.0025 + 0.01 x 0.9975 = 0.01245 for tall and 0.99 x 0.9 + 0.01 x 0.1 = 0.892 for dwarf; by the weights 0.75 and 0.25 the dwarf's
    /// share is 0.223 / (0.223 + 0.00934) = 0.960.
    /// </summary>
    [Fact]
    public void A_plant_counts_for_the_form_it_looks_like()
    {
        var guide = new DeterminedCounts(Guide, [Plant("parva-alba", Answer.Of("spots", "present"))]).Guide();
        Assert.Equal(0.960 * 0.99, Counted(guide, "parva-alba/dwarf", "present"), 2);
        Assert.Equal(0.040 * 0.99, Counted(guide, "parva-alba/tall", "present"), 2);
    }

    [Fact]
    public void An_answer_that_says_nothing_and_something_else_count_nothing()
    {
        Assert.Empty(new DeterminedCounts(Guide, [Plant("parva-nigra", Answer.Of("spots", "absent", "present"))]).Guide().Counts);
        Assert.Empty(new DeterminedCounts(Guide, [Plant("something-else", Answer.Of("spots", "present"))]).Guide().Counts);
    }

    [Fact]
    public void Without_a_source_a_trait_waits_for_five_plants()
    {
        PlantCounts[] plants = [.. Enumerable.Range(0, 5).Select(_ => Plant("falsa-parva", Answer.Of("spots", "present")))];
        Assert.Empty(new DeterminedCounts(Guide, plants[..4]).Guide().Counts);
        Assert.NotEmpty(new DeterminedCounts(Guide, plants).Guide().Counts);
    }

    [Fact]
    public void Leaving_a_plant_out_is_as_if_it_had_never_been_seen()
    {
        var (first, second) = (Plant("parva-nigra", Answer.Of("spots", "absent"), Answer.Measured("leaf_mm", 44)), Plant("parva-nigra", Answer.Of("spots", "present"), Answer.Measured("leaf_mm", 50)));
        var without = new DeterminedCounts(Guide, [first, second]).GuideWithout(second, Guide.Guide.Traits.Select(t => t.Id).ToHashSet()).Counts;
        var alone = new DeterminedCounts(Guide, [first]).Guide().Counts;
        Assert.Equal(alone.Select(Text), without.Select(Text));
    }

    [Fact]
    public void Cut_down_to_the_answered_traits_it_ranks_to_the_same_odds()
    {
        IReadOnlyList<Answer> answers = [Answer.Of("spots", "present"), Answer.Measured("leaf_mm", 12)];
        var (own, other) = (Plant("parva-alba", answers), Plant("parva-nigra", Answer.Of("hairs", "many"), Answer.Of("spots", "absent")));
        var counts = new DeterminedCounts(Guide, [own, other]);
        var whole = CompiledGuide.Compile(counts.GuideWithout(own, Guide.Guide.Traits.Select(t => t.Id).ToHashSet()));
        var cut = CompiledGuide.Compile(counts.GuideWithout(own, new HashSet<string> { "spots", "leaf_mm" }));
        var expected = Ranker.Rank(whole, Evidence.OfKnown(whole, answers), Prior.OfGuide).Candidates;
        var found = Ranker.Rank(cut, Evidence.OfKnown(cut, answers), Prior.OfGuide).Candidates;
        Assert.Equal(expected.Select(c => (c.Id, Math.Round(c.Probability, 13))), found.Select(c => (c.Id, Math.Round(c.Probability, 13))));
    }

    [Fact]
    public void The_guide_stays_valid_and_the_published_cells_untouched()
    {
        var guide = new DeterminedCounts(Guide, [Plant("parva-alba", Answer.Of("hairs", "few"), Answer.Measured("leaf_mm", 30))]).Guide();
        Assert.Empty(GuideFile.Read(GuideText.Write(guide)).Faults);
        Assert.Equal(Guide.Guide.Cells, guide.Cells);
        Assert.Empty(DeterminedCounts.WithoutIn(guide).Counts);
    }

    /// <summary>The scored plants are those that prove something; each is ranked without its own counts, so a guide learned from one plant does not change for it.</summary>
    [Fact]
    public void A_re_run_scores_the_proving_plants_alone()
    {
        RerunPlant[] plants =
        [
            new("1", "parva-nigra", [Answer.Of("spots", "present")], IsProof: true),
            new("2", "parva-alba", [Answer.Of("spots", "present")], IsProof: false),
            new("3", "long-gone", [Answer.Of("spots", "present"), Answer.Of("no-such-trait", "x")], IsProof: true),
        ];
        var rerun = GuideRerun.Of(Guide.Guide, Guide.Guide, isLearning: true, plants, null, default);
        Assert.Equal(3, rerun.Lines.Count);
        Assert.Equal(2, rerun.Before!.Cases);
        Assert.Equal(rerun.Lines[0].Before.Truth, rerun.Lines[0].After.Truth, 12);
        Assert.Equal(0, rerun.Lines[2].After.Truth);
    }

    private static string Text(CountRow row) => FormattableString.Invariant($"{row.Of} {row.Trait} {row.State} {row.Count:0.####} {row.MeanLog:0.####} {row.SdLog:0.####}");
}
