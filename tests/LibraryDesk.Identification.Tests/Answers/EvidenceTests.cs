using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Answers;

public sealed class EvidenceTests
{
    private static readonly CompiledGuide Guide = SmallGuide.Compiled;

    public static TheoryData<string, Answer> Wrong => new()
    {
        { EvidenceFault.UnknownTrait, Answer.Of("colour", "red") },
        { EvidenceFault.UnknownState, Answer.Of("spots", "absent", "striped") },
        { EvidenceFault.NothingSaid, Answer.Of("spots") },
        { EvidenceFault.NothingSaid, Answer.MeasuredAs("leaf_mm") },
        { EvidenceFault.WrongKind, Answer.Of("leaf_mm", "long") },
        { EvidenceFault.WrongKind, Answer.Measured("spots", 3) },
        { EvidenceFault.NotAMeasure, Answer.Measured("leaf_mm", double.NaN) },
        { EvidenceFault.NotAMeasure, Answer.Measured("leaf_mm", double.PositiveInfinity) },
        { EvidenceFault.NotAMeasure, Answer.Measured("leaf_mm", -3) },
        { EvidenceFault.NotAMeasure, Answer.Measured("leaf_mm", 0) },
        { EvidenceFault.NotAMeasure, Answer.Between("leaf_mm", 9, 3) },
        { EvidenceFault.NotAMeasure, Answer.Between("leaf_mm", 9, double.NaN) },
        { EvidenceFault.NotAMeasure, Answer.Between("leaf_mm", double.NaN, 9) },
        { EvidenceFault.AbsurdMeasure, Answer.Measured("leaf_mm", 1e7) },
        { EvidenceFault.AbsurdMeasure, Answer.Measured("leaf_mm", 1e-7) },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_answer_is_a_fault_that_names_its_row(string code, Answer wrong)
    {
        var check = Evidence.Check(Guide, [Answer.Of("hairs", "few"), wrong with { Row = 17 }]);
        Assert.Null(check.Evidence);
        var fault = Assert.Single(check.Faults);
        Assert.Equal((code, 17), (fault.Code, fault.Row));
    }

    [Fact]
    public void One_person_cannot_say_two_things_of_one_trait_at_one_look()
    {
        var check = Evidence.Check(Guide, [Answer.Of("spots", "absent"), Answer.Of("spots", "present")]);
        Assert.Equal((EvidenceFault.Contradictory, 2), (check.Faults[0].Code, check.Faults[0].Row));
        Assert.NotNull(Evidence.Check(Guide, [Answer.Of("spots", "absent"), Answer.Of("spots", "present") with { Person = "another" }]).Evidence);
    }

    [Fact]
    public void Ten_thousand_answers_are_refused_and_a_thousand_are_taken()
    {
        List<Answer> Many(int count) => [.. Enumerable.Range(0, count).Select(i => Answer.Of("hairs", "few") with { Person = $"{i}" })];
        Assert.Equal(EvidenceFault.TooMany, Evidence.Check(Guide, Many(10_000)).Faults[0].Code);
        var ranking = Ranker.Rank(Guide, Evidence.Check(Guide, Many(1000)).Evidence!, Prior.OfGuide);
        Assert.Equal(1, ranking.Candidates.Sum(c => c.Probability), 9);
    }

    [Fact]
    public void Less_sure_moves_less()
    {
        double After(Sureness sure) => Nigra(Answer.Of("spots", "present") with { Sure = sure });
        Assert.True(After(Sureness.Sure) > After(Sureness.Fairly));
        Assert.True(After(Sureness.Fairly) > After(Sureness.Faint));
        Assert.True(After(Sureness.Faint) > Nigra());
    }

    [Fact]
    public void Two_people_who_disagree_at_one_look_weaken_the_trait()
    {
        var agreed = Nigra(Answer.Of("spots", "present"));
        var disputed = Nigra(Answer.Of("spots", "present"), Answer.Of("spots", "absent") with { Person = "another" });
        Assert.True(Nigra() < disputed + 0.2 && disputed < agreed);
    }

    [Fact]
    public void Neighbouring_states_of_an_ordered_trait_are_mistaken_sooner_than_far_ones()
    {
        // nigra is always "many"; "few" is one step from it, "none" two.
        double Against(string state) => Nigra(Answer.Of("hairs", state) with { Sure = Sureness.Faint }) / Nigra();
        Assert.True(Against("none") < Against("few"));
    }

    [Fact]
    public void A_measure_between_the_usual_ranges_is_told_from_its_nearness()
    {
        Assert.True(Nigra(Answer.Measured("leaf_mm", 55)) > Nigra(Answer.Measured("leaf_mm", 25)));
        Assert.True(Nigra(Answer.Between("leaf_mm", 50, 60)) > Nigra(Answer.Between("leaf_mm", 20, 30)));
    }

    private static double Nigra(params Answer[] answers) =>
        Ranker.Rank(Guide, Evidence.Check(Guide, answers).Evidence!, Prior.OfGuide).Candidates.Single(c => c.Id == "parva-nigra").Probability;
}
