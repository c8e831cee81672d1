using System.Globalization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Answers;

/// <summary>What an answer must keep to be taken.</summary>
internal static class AnswerRules
{
    /// <summary>Answers a case can hold; a season of weekly looks by five people stays far below.</summary>
    public const int MostAnswers = 5000;

    /// <summary>A measure this many times beyond what the guide spans is another unit or a slip.</summary>
    private const double AbsurdFactor = 20;

    public static List<EvidenceFault> Check(CompiledGuide guide, IReadOnlyList<Answer> answers)
    {
        var faults = new List<EvidenceFault>();
        if (answers.Count > MostAnswers)
        {
            faults.Add(new EvidenceFault(EvidenceFault.TooMany, Row(answers, MostAnswers), answers[MostAnswers].Trait, $"{answers.Count} answers in one case; {MostAnswers} is the most. Split the case or leave out repeated looks."));
            return faults;
        }

        var seen = new Dictionary<(string, string, string), int>();
        for (var i = 0; i < answers.Count; i++)
        {
            var answer = answers[i];
            var row = Row(answers, i);
            var before = faults.Count;
            CheckAnswer(guide, answer, row, faults);
            if (faults.Count > before) continue;
            var key = (answer.Trait, answer.Person, answer.Look);
            if (!seen.TryAdd(key, row))
            {
                faults.Add(new EvidenceFault(EvidenceFault.Contradictory, row, answer.Trait, $"\"{answer.Trait}\" was answered already on row {seen[key]} by the same person at the same look. Give one answer, or \"either of these\"."));
            }
        }

        return faults;
    }

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
            if (!double.IsFinite(band.Low) || !double.IsFinite(band.High) || band.Low < 0 || band.High <= 0)
            {
                fault(EvidenceFault.NotAMeasure, $"\"{trait.Id}\" needs a number above 0 in {trait.Unit}.");
            }
            else if (band.Low > band.High)
            {
                fault(EvidenceFault.NotAMeasure, $"the range {Text(band.Low)}..{Text(band.High)} of \"{trait.Id}\" is upside down.");
            }
            else if (band.High < Math.Exp(compiled.Scale!.LowLog) / AbsurdFactor || band.Low > Math.Exp(compiled.Scale.HighLog) * AbsurdFactor)
            {
                fault(EvidenceFault.AbsurdMeasure, $"{Text(band.Low == band.High ? band.Low : band.High)} {trait.Unit} is far from anything known for \"{trait.Id}\" (about {Text(Math.Exp(compiled.Scale.LowLog))} to {Text(Math.Exp(compiled.Scale.HighLog))} {trait.Unit}). Check the unit.");
            }
        }
    }

    private static string Text(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
