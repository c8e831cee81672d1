using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>A guide in other words says the same of every plant.</summary>
public sealed class GuideTranslationTests
{
    public static TheoryData<string> Ids => [.. BuiltInGuides.Ids];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Only_what_people_read_is_put_in_other_words(string id)
    {
        var guide = BuiltInGuides.Open(id)!.Guide!;
        var other = GuideTranslation.Of(guide, Other);

        // Back again, nothing else differs: ids, sources, scientific names, drawings and cells.
        var back = GuideTranslation.Of(other, text => text[1..^1]) with { IsTranslated = false };
        Assert.Equal(GuideText.Write(guide), GuideText.Write(back));
        Assert.Equal(guide.Candidates.Where(c => c.Kind != CandidateKind.SomethingElse).Select(c => c.Name), other.Candidates.Where(c => c.Kind != CandidateKind.SomethingElse).Select(c => c.Name));
        Assert.Equal(guide.Sources, other.Sources);
        Assert.Equal(guide.Cells, other.Cells);
        Assert.Equal(guide.Traits.SelectMany(t => t.States).Select(s => (s.Id, s.Drawing)), other.Traits.SelectMany(t => t.States).Select(s => (s.Id, s.Drawing)));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_text_that_people_read_is_put_in_other_words(string id)
    {
        var other = GuideTranslation.Of(BuiltInGuides.Open(id)!.Guide!, Other);

        string?[] read =
        [
            other.Crop,
            .. other.Stages.Select(s => s.Name),
            .. other.Parts.Select(p => p.Name),
            .. other.Traits.SelectMany(t => new[] { t.Name, t.Question, t.Hint, t.Why, t.Unit }),
            .. other.Traits.SelectMany(t => t.States).SelectMany(s => new[] { s.Name, s.Hint }),
            .. other.Cautions.SelectMany(c => new[] { c.Title, c.Text }),
            .. other.Candidates.SelectMany(c => new[] { c.Common, c.PriorBasis, c.Card }),
            .. other.Candidates.SelectMany(c => c.Forms).SelectMany(f => new[] { f.Name, f.WeightBasis }),
            other.Candidates.Single(c => c.Kind == CandidateKind.SomethingElse).Name,
        ];
        Assert.All(read.Where(text => !string.IsNullOrEmpty(text)), text => Assert.StartsWith("«", text, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Odds_looks_and_reasons_weigh_the_same_and_are_named_in_the_other_words(string id)
    {
        var guide = CompiledGuide.Compile(BuiltInGuides.Open(id)!.Guide!);
        // Reckoned first in the words of the guide: whatever is kept ready by that must not be heard in the other words.
        var (ranking, plan, reasons) = Reckon(guide);
        var (otherRanking, otherPlan, otherReasons) = Reckon(guide.Translate(Other));

        Assert.Equal(ranking.Candidates.Select(c => (c.Id, c.Probability)), otherRanking.Candidates.Select(c => (c.Id, c.Probability)));
        Assert.Equal(ranking.Candidates.SelectMany(c => Forms(guide, c.Id)), otherRanking.Candidates.SelectMany(c => Forms(guide.Translate(Other), c.Id)));
        Assert.Equal(plan.Now.Select(l => (l.Trait, l.Bits)), otherPlan.Now.Select(l => (l.Trait, l.Bits)));
        Assert.Equal(reasons.Reasons.Select(r => (r.Trait, r.Decibans)), otherReasons.Reasons.Select(r => (r.Trait, r.Decibans)));

        Assert.NotEmpty(otherReasons.Reasons);
        Assert.All(otherReasons.Reasons, r => Assert.True(r.Name.StartsWith('«') && r.Said.StartsWith('«'), r.Name + r.Said));
        Assert.NotEmpty(otherPlan.Now);
        Assert.All(otherPlan.Now, l => Assert.True(l.Name.StartsWith('«') && l.Question.StartsWith('«'), l.Name));
        Assert.StartsWith("«", otherRanking.Candidates.Single(c => c.Kind == CandidateKind.SomethingElse).Name, StringComparison.Ordinal);
    }

    [Fact]
    public void A_translated_guide_is_not_written_out()
    {
        var other = GuideTranslation.Of(BuiltInGuides.Open("capsicum")!.Guide!, Other);

        Assert.Throws<ArgumentException>(() => GuideText.Write(other));
    }

    private static string Other(string text) => $"«{text}»";

    // The first and the last state of the first four traits that have states: several answers, none of them of a unit.
    private static (Ranking Ranking, LookPlan Plan, ReasonTable Reasons) Reckon(CompiledGuide guide)
    {
        var asked = guide.Guide.Traits.Where(t => t.Asked && t.States.Count > 0).Take(4);
        var evidence = Evidence.Check(guide, [.. asked.Select((t, i) => Answer.Of(t.Id, i % 2 == 0 ? t.States[0].Id : t.States[^1].Id))]).Evidence!;
        var ranking = Ranker.Rank(guide, evidence, Prior.OfGuide);
        return (ranking, LookPlanner.Plan(guide, evidence, Prior.OfGuide, null), ReasonFinder.Between(guide, evidence, Prior.OfGuide, ranking.Candidates[0].Id, ranking.Candidates[1].Id)!);
    }

    private static IEnumerable<double> Forms(CompiledGuide guide, string candidate) => guide.Guide.FindCandidate(candidate)!.Forms
        .SelectMany(f => guide.Guide.Traits.SelectMany(t => guide.Frequencies(candidate, f.Id, t.Id) ?? []));
}
