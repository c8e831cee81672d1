using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>One trait that tells two candidates apart.</summary>
/// <param name="A">What the first usually shows, in words.</param>
/// <param name="DrawingA">Drawing of its most frequent state; null where there is none.</param>
/// <param name="Word">How much an answer would say on average, if both were as likely before.</param>
/// <param name="Plant">Standing answers of this plant in words; null where there are none.</param>
/// <param name="FallsOnA">True where an answer is among what the first usually shows.</param>
public sealed record TellApartRow(
    string Trait, string A, string? DrawingA, string B, string? DrawingB, ReasonWord Word, string? Plant, bool FallsOnA, bool FallsOnB);

/// <summary>
/// What the crop guide says of two candidates that somebody chose. It is the same for every case but for the last column: neither the odds
/// of the case nor anybody's opinion goes into it, so it may be used before the seal.
/// </summary>
public static class TellApart
{
    // Under this a state is not what one would expect of the candidate.
    private const double Usual = 0.15;

    /// <summary>Rows, the most telling first; empty when a candidate is unknown or both are the same.</summary>
    /// <param name="answers">Standing answers that the reader may see.</param>
    public static IReadOnlyList<TellApartRow> Rows(CompiledGuide guide, string a, string b, IReadOnlyList<AnswerRow> answers, int most = 12)
    {
        ArgumentNullException.ThrowIfNull(guide);
        ArgumentNullException.ThrowIfNull(answers);
        if (a == b || guide.Guide.FindCandidate(a) is null || guide.Guide.FindCandidate(b) is null) return [];
        var looks = LookPlanner.TellApart(guide, Evidence.None(guide), new Prior(IsFlat: true, Among: [a, b]), a, b, partsPresent: null, most);
        return [.. looks.OrderByDescending(ExpectedDecibans).Select(look => Row(guide, guide.Guide.FindTrait(look.Trait)!, a, b, look, answers))];
    }

    /// <summary>Citations behind the rows of both candidates.</summary>
    public static IReadOnlyList<string> Sources(CropGuide guide, string a, string b, IReadOnlyList<TellApartRow> rows)
    {
        ArgumentNullException.ThrowIfNull(guide);
        var traits = guide.Traits.Where(t => rows.Any(r => r.Trait == t.Name)).Select(t => t.Id).ToHashSet();
        return
        [
            .. guide.Cells.Where(c => traits.Contains(c.Trait) && (Of(c.Of, a) || Of(c.Of, b)))
                .Select(c => c.Source).Distinct().Select(id => guide.FindSource(id)?.Citation ?? id).Order(StringComparer.Ordinal),
        ];

        static bool Of(string of, string candidate) => of == candidate || of.StartsWith(candidate + "/", StringComparison.Ordinal);
    }

    private static TellApartRow Row(CompiledGuide guide, Trait trait, string a, string b, NextLook look, IReadOnlyList<AnswerRow> answers)
    {
        var own = answers.Where(x => x.TraitId == trait.Id && x.Kind is (AnswerKind.States or AnswerKind.Measure)).ToList();
        var (wordsA, drawingA) = Shows(guide, trait, a);
        var (wordsB, drawingB) = Shows(guide, trait, b);
        return new TellApartRow(
            trait.Name, wordsA, drawingA, wordsB, drawingB, Reason.WordOf(ExpectedDecibans(look)), Said(trait, own),
            own.Exists(x => FallsOn(guide, trait, a, x)), own.Exists(x => FallsOn(guide, trait, b, x)));
    }

    /// <summary>The weight an answer would have on average, in decibans, between two candidates that were as likely before.</summary>
    internal static double ExpectedDecibans(NextLook look)
    {
        var sum = 0.0;
        foreach (var outlook in look.Outlooks)
        {
            var p = Math.Min(outlook.LeaderProbability, 1 - 1e-6);
            if (p > 0.5) sum += outlook.Probability * 10 * Math.Log10(p / (1 - p));
        }
        return sum;
    }

    private static (string Words, string? Drawing) Shows(CompiledGuide guide, Trait trait, string candidate)
    {
        if (trait.Kind == TraitKind.Measured)
            return (guide.UsualRange(candidate, null, trait.Id) is { } range ? Say[$"{Number(range.Low)} to {Number(range.High)} {trait.Unit}"] : Say["not known"], null);
        if (guide.Frequencies(candidate, null, trait.Id) is not { } shares) return (Say["not known"], null);
        var states = trait.States.Zip(shares).OrderByDescending(s => s.Second).ToList();
        var (first, most) = states[0];
        var usual = states.Where(s => s.Second >= Usual).Take(3).Select(s => s.First.Name).DefaultIfEmpty(first.Name);
        return (most >= 0.9 ? first.Name : Or(usual), first.Drawing);
    }

    private static bool FallsOn(CompiledGuide guide, Trait trait, string candidate, AnswerRow answer)
    {
        if (trait.Kind == TraitKind.Measured)
            return guide.UsualRange(candidate, null, trait.Id) is { } range && answer.Low <= range.High && answer.High >= range.Low;
        if (guide.Frequencies(candidate, null, trait.Id) is not { } shares) return false;
        var said = answer.States.Split('|');
        return trait.States.Zip(shares).Any(s => s.Second >= Usual && said.Contains(s.First.Id));
    }

    private static string? Said(Trait trait, List<AnswerRow> answers) => answers.Count == 0
        ? null
        : string.Join("; ", answers.Select(x => x.Kind == AnswerKind.Measure
            ? $"{Number(x.Low ?? 0)} {trait.Unit}"
            : Or(x.States.Split('|').Select(id => trait.FindState(id)?.Name ?? id))).Distinct());

    private static string Or(IEnumerable<string> several) => several.Aggregate((one, other) => Say[$"{one} or {other}"]);

    private static string Number(double value) => value.ToString(value < 10 ? "0.#" : "0", CultureInfo.CurrentCulture);
}
