using FsCheck.Xunit;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Laws;

/// <summary>What must hold for every case, tried on drawn ones.</summary>
public sealed class RankingLaws
{
    private static readonly CompiledGuide Guide = PepperGuide.Compiled;

    [Property]
    public void Probabilities_sum_to_one(int seed)
    {
        var ranking = Rank(RandomCases.Answers(Guide.Guide, seed));
        Assert.Equal(1, ranking.Candidates.Sum(c => c.Probability), 1e-9);
        Assert.Equal(1, ranking.Forms.Sum(f => f.Probability), 1e-9);
    }

    [Property]
    public void The_order_of_answers_never_matters(int seed)
    {
        var answers = RandomCases.Answers(Guide.Guide, seed);
        var shuffled = answers.OrderBy(_ => seed ^ answers.Count).Reverse().ToList();
        Same(Rank(answers), Rank(shuffled), 0);
    }

    [Property]
    public void An_answer_taken_back_restores_the_odds_exactly(int seed)
    {
        var answers = RandomCases.Answers(Guide.Guide, seed);
        var more = answers.Append(Answer.Of("corolla_spots", "green-yellow") with { Person = "one more", Look = "one more" }).ToList();
        Assert.Empty(Evidence.Check(Guide, more).Faults);
        Same(Rank(answers), Rank([.. more.Where(a => a.Person != "one more")]), 0);
    }

    [Property]
    public void Permuting_candidates_permutes_the_result(int seed)
    {
        var random = new Random(seed);
        var permuted = CompiledGuide.Compile(Guide.Guide with { Candidates = [.. Guide.Guide.Candidates.OrderBy(_ => random.Next())] });
        var answers = RandomCases.Answers(Guide.Guide, seed);
        Same(Rank(answers), Ranker.Rank(permuted, Evidence.Check(permuted, answers).Evidence!, Prior.OfGuide), 1e-12);
    }

    [Property]
    public void Either_of_all_states_moves_nothing(int seed)
    {
        var answers = RandomCases.Answers(Guide.Guide, seed).Where(a => a.Trait != "fruit_shape").ToList();
        var all = Answer.Of("fruit_shape", [.. Guide.FindTrait("fruit_shape")!.States.Select(s => s.Id)]);
        Same(Rank(answers), Rank([.. answers, all]), 1e-12);
    }

    [Property(MaxTest = 40)]
    public void Expected_information_is_never_negative_and_never_more_than_what_is_open(int seed)
    {
        var evidence = Evidence.Check(Guide, RandomCases.Answers(Guide.Guide, seed)).Evidence!;
        var open = Ranker.Rank(Guide, evidence, Prior.OfGuide).EntropyBits;
        foreach (var look in LookPlanner.Plan(Guide, evidence, Prior.OfGuide, most: 100).Now)
        {
            Assert.InRange(look.Bits, 0, open + 1e-9);
            Assert.Equal(1, look.Outlooks.Sum(o => o.Probability), 1e-6);
        }
    }

    [Property(MaxTest = 40)]
    public void Reasons_are_the_same_from_both_sides_and_sum_up(int seed)
    {
        var evidence = Evidence.Check(Guide, RandomCases.Answers(Guide.Guide, seed)).Evidence!;
        var there = ReasonFinder.Between(Guide, evidence, Prior.OfGuide, "capsicum-annuum", "capsicum-chinense")!;
        var back = ReasonFinder.Between(Guide, evidence, Prior.OfGuide, "capsicum-chinense", "capsicum-annuum")!;
        Assert.Equal(there.TotalDecibans, -back.TotalDecibans, 1e-9);
        Assert.Equal(there.TotalDecibans, there.Reasons.Sum(r => r.Decibans) + there.TogetherDecibans, 1e-9);
    }

    [Property(MaxTest = 40)]
    public void Typicality_is_a_probability(int seed)
    {
        var evidence = Evidence.Check(Guide, RandomCases.Answers(Guide.Guide, seed)).Evidence!;
        Assert.InRange(TypicalityFinder.Of(Guide, evidence, Prior.OfGuide, "capsicum-annuum")!.Tail, 0, 1);
    }

    private static Ranking Rank(List<Answer> answers) => Ranker.Rank(Guide, Evidence.Check(Guide, answers).Evidence!, Prior.OfGuide);

    private static void Same(Ranking a, Ranking b, double tolerance)
    {
        var other = b.Candidates.ToDictionary(c => c.Id, c => c.Probability);
        foreach (var candidate in a.Candidates) Assert.InRange(Math.Abs(candidate.Probability - other[candidate.Id]), 0, tolerance);
    }
}
