using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Learning;

/// <summary>Reads the scores of a labelled plant as answers.</summary>
public static class LabelledEvidence
{
    /// <summary>Evidence of one plant. Scores of traits or states that the guide does not have say nothing and are named in <paramref name="leftOut"/>.</summary>
    public static Evidence Of(CompiledGuide guide, LabelledCase one, ICollection<LabelledScore>? leftOut)
    {
        var answers = new List<Answer>();
        foreach (var scores in one.Scores.GroupBy(s => s.Trait))
        {
            if (guide.FindTrait(scores.Key) is not { } trait)
            {
                foreach (var score in scores) leftOut?.Add(score);
                continue;
            }

            if (AnswerOf(guide, trait, [.. scores], leftOut) is { } answer) answers.Add(answer);
        }

        return Evidence.Check(guide, answers).Evidence!;
    }

    private static Answer? AnswerOf(CompiledGuide guide, Trait trait, List<LabelledScore> scores, ICollection<LabelledScore>? leftOut)
    {
        var known = scores.Where(s => IsKnown(guide, trait, s)).ToList();
        foreach (var score in scores.Except(known)) leftOut?.Add(score);
        if (known.Count == 0) return null;
        return trait.Kind == TraitKind.Measured
            ? Answer.MeasuredAs(trait.Id, [.. known.Select(s => GuideLearner.Number(s.State)!.Value).Select(v => new Band(v, v))])
            : Answer.Of(trait.Id, [.. known.Select(s => s.State).Distinct()]);
    }

    private static bool IsKnown(CompiledGuide guide, Trait trait, LabelledScore score)
    {
        if (trait.Kind != TraitKind.Measured) return trait.FindState(score.State) is not null;
        return GuideLearner.Number(score.State) is > 0 and var value && Evidence.FaultsOf(guide, [Answer.Measured(trait.Id, value)]).Count == 0;
    }
}
