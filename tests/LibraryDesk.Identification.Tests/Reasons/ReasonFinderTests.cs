using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Reasons;

public sealed class ReasonFinderTests
{
    private static readonly CompiledGuide Guide = SmallGuide.Compiled;

    [Fact]
    public void Rows_and_together_sum_to_the_whole()
    {
        var table = Between(Answer.Of("spots", "present"), Answer.Measured("leaf_mm", 9));
        Assert.Equal(table.TotalDecibans, table.Reasons.Sum(r => r.Decibans) + table.TogetherDecibans, 9);
        // Small leaves and spots both go with the dwarf form, so they are worth more together than apart.
        Assert.NotEqual(0, table.TogetherDecibans, 3);
    }

    [Fact]
    public void The_whole_is_what_the_answers_do_to_the_odds()
    {
        Answer[] answers = [Answer.Of("spots", "present"), Answer.Of("hairs", "none")];
        var ranking = Ranker.Rank(Guide, Evidence.Check(Guide, answers).Evidence!, Prior.OfGuide);
        var alba = ranking.Candidates.Single(c => c.Id == "parva-alba").Probability;
        var nigra = ranking.Candidates.Single(c => c.Id == "parva-nigra").Probability;
        Assert.Equal(10 * Math.Log10(alba / nigra / (0.5 / 0.3)), Between(answers).TotalDecibans, 9);
    }

    [Fact]
    public void A_trait_against_the_whole_is_a_conflict()
    {
        var table = Between(Answer.Of("spots", "absent"), Answer.Of("hairs", "none"), Answer.Of("scent", "plain"));
        Assert.Contains(table.Conflicts, r => r.Trait == "scent");
        Assert.True(table.TotalDecibans > 0);
    }

    [Theory]
    [InlineData(25, ReasonWord.Decides)]
    [InlineData(-20, ReasonWord.Decides)]
    [InlineData(10, ReasonWord.Strong)]
    [InlineData(-5, ReasonWord.Some)]
    [InlineData(4.9, ReasonWord.Slight)]
    public void Words_follow_the_weight(double decibans, ReasonWord word) => Assert.Equal(word, Reason.WordOf(decibans));

    [Fact]
    public void An_unknown_candidate_has_no_reasons() =>
        Assert.Null(ReasonFinder.Between(Guide, Evidence.None(Guide), Prior.OfGuide, "parva-alba", "parva-rubra"));

    private static ReasonTable Between(params Answer[] answers) =>
        ReasonFinder.Between(Guide, Evidence.Check(Guide, answers).Evidence!, Prior.OfGuide, "parva-alba", "parva-nigra")!;
}
