using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Looks;

public sealed class LookPlannerTests
{
    private static readonly CompiledGuide Guide = SmallGuide.Compiled;

    [Fact]
    public void Parts_to_come_are_worth_waiting_for_and_not_asked_now()
    {
        var plan = LookPlanner.Plan(Guide, Evidence.None(Guide), Prior.OfGuide, new HashSet<string> { "leaves" });
        Assert.All(plan.Now, l => Assert.Equal("leaves", l.Part));
        Assert.All(plan.WorthWaitingFor, l => Assert.Equal("flowers", l.Part));
        Assert.NotEmpty(plan.WorthWaitingFor);
    }

    [Fact]
    public void What_is_only_accepted_as_known_is_never_asked()
    {
        var plan = LookPlanner.Plan(Guide, Evidence.None(Guide), Prior.OfGuide);
        Assert.DoesNotContain(plan.Now, l => l.Trait == "scent");
    }

    [Fact]
    public void A_sure_answer_is_not_asked_again_and_a_faint_one_is()
    {
        Assert.DoesNotContain(Plan(Answer.Of("spots", "absent")).Now, l => l.Trait == "spots");
        Assert.Contains(Plan(Answer.Of("spots", "absent") with { Sure = Sureness.Faint }).Now, l => l.Trait == "spots" && l.IsSecondLook);
    }

    [Fact]
    public void Answers_foreseen_sum_to_one_and_agree_with_ranking_after_them()
    {
        var look = Plan(Answer.Measured("leaf_mm", 25)).Now.Single(l => l.Trait == "spots");
        Assert.Equal(1, look.Outlooks.Sum(o => o.Probability), 9);
        var after = Ranker.Rank(Guide, Check(Answer.Measured("leaf_mm", 25), Answer.Of("spots", "present")), Prior.OfGuide);
        var outlook = look.Outlooks.Single(o => o.State == "present");
        Assert.Equal(after.Candidates[0].Id, outlook.Leader);
        Assert.Equal(after.Candidates[0].Probability, outlook.LeaderProbability, 9);
    }

    [Fact]
    public void Expected_information_is_the_mean_drop_of_entropy()
    {
        var before = Ranker.Rank(Guide, Evidence.None(Guide), Prior.OfGuide).EntropyBits;
        foreach (var look in Plan().Now.Where(l => l.Trait != "leaf_mm"))
        {
            var after = look.Outlooks.Sum(o => o.Probability * Ranker.Rank(Guide, Check(Answer.Of(look.Trait, o.State!)), Prior.OfGuide).EntropyBits);
            Assert.Equal(before - after, look.Bits, 9);
        }
    }

    [Fact]
    public void A_second_look_is_reckoned_as_the_mean_drop_of_entropy_too()
    {
        var first = Answer.Of("hairs", "few") with { Sure = Sureness.Faint, Look = "1" };
        var before = Ranker.Rank(Guide, Check(first), Prior.OfGuide).EntropyBits;
        var look = Plan(first).Now.Single(l => l.Trait == "hairs");
        var after = look.Outlooks.Sum(o => o.Probability * Ranker.Rank(Guide, Check(first, Answer.Of("hairs", o.State!) with { Look = "2" }), Prior.OfGuide).EntropyBits);
        Assert.Equal(before - after, look.Bits, 9);
    }

    [Fact]
    public void Telling_two_candidates_apart_names_what_differs_between_them()
    {
        var looks = LookPlanner.TellApart(Guide, Evidence.None(Guide), Prior.OfGuide, "parva-alba", "parva-nigra");
        Assert.Contains(looks, l => l.Trait == "spots");
        Assert.All(looks, l => Assert.InRange(l.Bits, 0, 1));
    }

    private static LookPlan Plan(params Answer[] answers) => LookPlanner.Plan(Guide, Check(answers), Prior.OfGuide);

    private static Evidence Check(params Answer[] answers) => Evidence.Check(Guide, answers).Evidence!;
}
