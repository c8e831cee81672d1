using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Odds;

public sealed class RankerTests
{
    private static readonly CompiledGuide Guide = SmallGuide.Compiled;

    [Fact]
    public void Without_answers_the_odds_are_the_prior()
    {
        var ranking = Rank();
        Assert.Equal(0.5, Of(ranking, "parva-alba"), 12);
        Assert.Equal(0.1, Of(ranking, "something-else"), 12);
    }

    [Fact]
    public void One_answer_follows_bayes_by_hand()
    {
        // P(absent): tall .80 alone, so 1 - floor share; dwarf .1; nigra floor; see the guide. Confusion .99/.01 with two states.
        double tall = 1 / 1.002, dwarf = 0.1, nigra = 0.002 / 1.002;
        static double Seen(double absent) => (0.99 * absent) + (0.01 * (1 - absent));
        var alba = (0.75 * Seen(tall)) + (0.25 * Seen(dwarf));
        var pooled = ((0.5 * alba) + (0.3 * Seen(nigra))) / 0.8;
        var other = (0.5 * pooled) + (0.5 * 0.5);
        var sum = (0.5 * alba) + (0.3 * Seen(nigra)) + (0.1 * pooled) + (0.1 * other);
        var ranking = Rank(Answer.Of("spots", "absent"));
        Assert.Equal(0.5 * alba / sum, Of(ranking, "parva-alba"), 12);
        Assert.Equal(0.1 * pooled / sum, Of(ranking, "falsa-parva"), 12);
        Assert.Equal(0.1 * other / sum, Of(ranking, "something-else"), 12);
    }

    [Fact]
    public void A_missing_cell_is_exactly_neutral_against_all_that_have_one()
    {
        var among = new Prior(Among: ["parva-alba", "parva-nigra", "falsa-parva"]);
        var before = Of(Ranker.Rank(Guide, Evidence.None(Guide), among), "falsa-parva");
        var after = Of(Ranker.Rank(Guide, Check(Answer.Of("spots", "present")), among), "falsa-parva");
        Assert.Equal(before, after, 12);
    }

    [Fact]
    public void Either_of_all_states_moves_nothing() =>
        Assert.Equal(Of(Rank(), "parva-alba"), Of(Rank(Answer.Of("hairs", "none", "few", "many")), "parva-alba"), 12);

    [Fact]
    public void A_range_over_everything_moves_nothing() =>
        Assert.Equal(Of(Rank(), "parva-alba"), Of(Rank(Answer.Between("leaf_mm", 0, 1e9)), "parva-alba"), 9);

    [Fact]
    public void Five_people_at_one_look_are_not_five_plants()
    {
        var five = Rank([.. Enumerable.Range(0, 5).Select(i => Answer.Of("spots", "present") with { Person = $"p{i}" })]);
        // However many people say it, the state was there once: the ratio cannot pass that of the frequencies.
        var limit = 0.998 / 1.0 / (0.25 * 0.9);
        Assert.True(Of(five, "parva-nigra") / Of(five, "parva-alba") < 0.3 / 0.5 * limit * 1.05);
    }

    [Fact]
    public void A_short_leaf_points_to_the_dwarf_form()
    {
        var ranking = Rank(Answer.Measured("leaf_mm", 8));
        Assert.Equal("dwarf", ranking.Forms[0].Form);
    }

    [Fact]
    public void The_order_of_the_answers_never_matters()
    {
        Answer[] answers = [Answer.Of("spots", "present"), Answer.Of("hairs", "few") with { Look = "2" }, Answer.Of("hairs", "many"), Answer.Measured("leaf_mm", 33)];
        Assert.Equal(Of(Rank(answers), "parva-nigra"), Of(Rank([.. answers.Reverse()]), "parva-nigra"));
    }

    private static Ranking Rank(params Answer[] answers) => Ranker.Rank(Guide, Check(answers), Prior.OfGuide);

    private static Evidence Check(params Answer[] answers)
    {
        var check = Evidence.Check(Guide, answers);
        Assert.Empty(check.Faults);
        return check.Evidence!;
    }

    private static double Of(Ranking ranking, string id) => ranking.Candidates.Single(c => c.Id == id).Probability;
}
