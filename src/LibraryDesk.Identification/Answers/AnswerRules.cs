using System.Globalization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Answers;

/// <summary>What an answer must keep to be taken.</summary>
internal static class AnswerRules
{
    /// <summary>Answers a case can hold; a season of weekly looks by five people stays far below.</summary>
    public const int MostAnswers = 5000;

    /// <summary>Up to so many answers are compared one with another, which is quicker than a table of them.</summary>
    private const int FewAnswers = 40;

    /// <summary>A measure twenty times beyond what the guide spans is another unit or a slip.</summary>
    private static readonly double AbsurdLog = Math.Log(20);

    public static List<EvidenceFault> Check(CompiledGuide guide, IReadOnlyList<Answer> answers)
    {
        var faults = new List<EvidenceFault>();
        if (answers.Count > MostAnswers)
        {
            faults.Add(new EvidenceFault(EvidenceFault.TooMany, Row(answers, MostAnswers), answers[MostAnswers].Trait, $"{answers.Count} answers in one case; {MostAnswers} is the most. Split the case or leave out repeated looks."));
            return faults;
        }

        for (var i = 0; i < answers.Count; i++)
        {
            if (!IsGood(guide, answers[i])) CheckAnswer(guide, answers[i], Row(answers, i), faults);
        }

        CheckTwice(answers, faults);
        return faults.Count < 2 ? faults : [.. faults.OrderBy(f => f.Row)];
    }

    /// <summary>The common answers, all in order, are seen to be so without making anything.</summary>
    private static bool IsGood(CompiledGuide guide, Answer answer)
    {
        var index = guide.TraitIndex(answer.Trait);
        if (index < 0) return false;
        var trait = guide.Traits[index];
        if (trait.Scale is { } scale)
        {
            if (answer.States.Count > 0 || answer.Bands.Count != 1 || !(answer.Bands[0].Low > 0) || !(answer.Bands[0].High >= answer.Bands[0].Low)) return false;
            return !IsAbsurd(scale, answer.Bands[0]);
        }

        return answer.Bands.Count == 0 && answer.States.Count == 1 && trait.Trait.StateIndex(answer.States[0]) >= 0;
    }

    /// <summary>One person says one thing of one trait at one look.</summary>
    private static void CheckTwice(IReadOnlyList<Answer> answers, List<EvidenceFault> faults)
    {
        if (answers.Count > FewAnswers)
        {
            CheckTwiceOfMany(answers, faults);
            return;
        }

        for (var i = 1; i < answers.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (answers[i].Trait != answers[j].Trait || answers[i].Person != answers[j].Person || answers[i].Look != answers[j].Look) continue;
                faults.Add(Twice(answers, i, j));
                break;
            }
        }
    }

    private static void CheckTwiceOfMany(IReadOnlyList<Answer> answers, List<EvidenceFault> faults)
    {
        var seen = new Dictionary<(string, string, string), int>();
        for (var i = 0; i < answers.Count; i++)
        {
            var key = (answers[i].Trait, answers[i].Person, answers[i].Look);
            if (!seen.TryAdd(key, i)) faults.Add(Twice(answers, i, seen[key]));
        }
    }

    private static EvidenceFault Twice(IReadOnlyList<Answer> answers, int i, int j) => new(
        EvidenceFault.Contradictory,
        Row(answers, i),
        answers[i].Trait,
        $"\"{answers[i].Trait}\" was answered already on row {Row(answers, j)} by the same person at the same look. Give one answer, or \"either of these\".");

    private static int Row(IReadOnlyList<Answer> answers, int i) => answers[i].Row > 0 ? answers[i].Row : i + 1;

    private static void CheckAnswer(CompiledGuide guide, Answer answer, int row, List<EvidenceFault> faults)
    {
        void Fault(string code, string message) => faults.Add(new EvidenceFault(code, row, answer.Trait, message));
        var index = guide.TraitIndex(answer.Trait);
        if (index < 0)
        {
            Fault(EvidenceFault.UnknownTrait, $"\"{answer.Trait}\" is not a trait of guide {guide.Guide.Id} {guide.Guide.Version}. Its traits are: {string.Join(", ", guide.Guide.Traits.Select(t => t.Id))}.");
            return;
        }

        var compiled = guide.Traits[index];
        if (compiled.Scale is null) CheckStates(compiled.Trait, answer, Fault);
        else CheckBands(compiled, answer, Fault);
    }

    private static void CheckStates(Trait trait, Answer answer, Action<string, string> fault)
    {
        if (answer.Bands.Count > 0) fault(EvidenceFault.WrongKind, $"\"{trait.Id}\" is not measured. {StatesOf(trait)}");
        else if (answer.States.Count == 0) fault(EvidenceFault.NothingSaid, $"no state is given for \"{trait.Id}\". {StatesOf(trait)}");
        foreach (var state in answer.States.Where(s => trait.FindState(s) is null))
        {
            fault(EvidenceFault.UnknownState, $"\"{state}\" is not a state of \"{trait.Id}\". {StatesOf(trait)}");
        }
    }

    private static string StatesOf(Trait trait) => $"Its states are: {string.Join(", ", trait.States.Select(s => s.Id))}.";

    private static void CheckBands(CompiledTrait compiled, Answer answer, Action<string, string> fault)
    {
        var trait = compiled.Trait;
        if (answer.States.Count > 0)
        {
            fault(EvidenceFault.WrongKind, $"\"{trait.Id}\" is measured in {trait.Unit}: give a number such as 12 or a range such as 12..15, not \"{answer.States[0]}\".");
            return;
        }

        if (answer.Bands.Count == 0) fault(EvidenceFault.NothingSaid, $"no number is given for \"{trait.Id}\", measured in {trait.Unit}.");
        foreach (var band in answer.Bands)
        {
            // An end may be open: "12 or more" has no upper end.
            if (!double.IsFinite(band.Low) || double.IsNaN(band.High) || band.Low < 0 || band.High <= 0 || (double.IsInfinity(band.High) && band.Low == 0))
            {
                fault(EvidenceFault.NotAMeasure, $"\"{trait.Id}\" needs a number above 0 in {trait.Unit}.");
            }
            else if (band.Low > band.High)
            {
                fault(EvidenceFault.NotAMeasure, $"the range {Text(band.Low)}..{Text(band.High)} of \"{trait.Id}\" is upside down.");
            }
            else if (IsAbsurd(compiled.Scale!, band))
            {
                fault(EvidenceFault.AbsurdMeasure, $"{Text(double.IsInfinity(band.High) ? band.Low : band.High)} {trait.Unit} is far from anything known for \"{trait.Id}\" (about {Text(Math.Exp(compiled.Scale!.LowLog))} to {Text(Math.Exp(compiled.Scale.HighLog))} {trait.Unit}). Check the unit.");
            }
        }
    }

    private static bool IsAbsurd(MeasuredScale scale, Band band) =>
        Math.Log(band.High) < scale.LowLog - AbsurdLog || Math.Log(band.Low) > scale.HighLog + AbsurdLog;

    private static string Text(double value) => SignificantFigures.Round(value, 4).ToString(SignificantFigures.Format, CultureInfo.InvariantCulture);
}
