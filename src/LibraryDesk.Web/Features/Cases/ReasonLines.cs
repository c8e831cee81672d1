using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Reasons;
using LibraryDesk.Web.Shared.Odds;
using static LibraryDesk.Web.Features.Cases.CasesText;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>A reason as a line of the ledger, opening to its figures and sources.</summary>
internal static class ReasonLines
{
    public static EvidenceLine Of(Reason reason, CaseView view, CaseRanking ranking) => new($"{reason.Name}: {Lower(Said(reason, ranking))}", Weight(reason.Word))
    {
        Note = WhoWhen(reason.Trait, view),
        Facts = Facts(reason, ranking, ranking.Leader.Id, ranking.RunnerUp.Id),
    };

    public static string Decibans(double value) => Say[$"{value:0.0} decibans"];

    private static TallyWeight Weight(ReasonWord word) => word switch
    {
        ReasonWord.Decides => TallyWeight.Decides,
        ReasonWord.Strong => TallyWeight.Strong,
        ReasonWord.Some => TallyWeight.Some,
        _ => TallyWeight.Slight,
    };

    private static string? WhoWhen(string trait, CaseView view)
    {
        var answers = view.Looks.SelectMany(l => l.Answers.Select(a => (Answer: a, l.Look.Date)))
            .Where(a => a.Answer.TraitId == trait && a.Answer.Kind is AnswerKind.States or AnswerKind.Measure)
            .OrderBy(a => a.Answer.Id).ToList();
        if (answers.Count == 0) return null;
        var (first, date) = answers[0];
        var who = first.ByDesk ? Say["A volunteer"] : view.SpeaksForOwner ? Say["You"] : Say["The member"];
        var sure = first.Sureness switch { "fairly" => Say["fairly clear"], "faint" => Say["faint"], _ => null };
        var more = answers.Count > 1 ? Say[$"and {answers.Count - 1} more"] : null;
        return string.Join(", ", new[] { who, Dates.DayOfYear(date), sure, more }.OfType<string>());
    }

    /// <summary>What a reason between two candidates opens to: the answer, how usual it is in each, the weight, sources and guide.</summary>
    public static IReadOnlyList<Fact> Facts(Reason reason, CaseRanking ranking, string of, string against) => [.. AllFacts(reason, ranking, of, against)];

    /// <summary>What the odds rest on besides the answers: the packets it may come from. Null where there are none.</summary>
    public static string? Origin(CaseRanking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        var packets = ranking.Ranking.Packets;
        return packets.Count == 0 ? null : Say[$"Besides these answers the odds weigh where it may come from: {string.Join(", ", packets.Take(6).Select(p => p.Id))}{(packets.Count > 6 ? ", …" : "")}. What those packets are called counts as a hint, not as an answer."];
    }

    private static IEnumerable<Fact> AllFacts(Reason reason, CaseRanking ranking, string of, string against)
    {
        yield return new Fact(Say["Answered"], Said(reason, ranking));
        foreach (var candidate in new[] { of, against })
        {
            if (Usual(ranking, candidate, reason.Trait) is { } usual) yield return new Fact(ranking.Guide.Guide.FindCandidate(candidate)?.Name ?? candidate, usual);
        }
        yield return new Fact(Say["Weight"], Say[$"{Decibans(reason.Decibans)}: {SignificantFigures.Round(Math.Pow(10, Math.Abs(reason.Decibans) / 10), 2):0.###} times"]);
        var sources = reason.SourcesA.Concat(reason.SourcesB).Distinct().OrderBy(id => id == Cell.Memory)
            .Select(id => id == Cell.Memory ? Say["the guide’s makers, from memory"] : ranking.Guide.Guide.FindSource(id)?.Citation ?? id).ToList();
        yield return new Fact(sources.Count == 1 ? Say["Source"] : Say["Sources"], sources.Count == 0 ? Say["No published figure; counted as neutral"] : string.Join("; ", sources));
        yield return new Fact(Say["Guide"], Say[$"{ranking.Guide.Guide.Crop}, version {ranking.Guide.Guide.Version}"]);
    }

    /// <summary>How often a candidate shows what was answered, or its usual range.</summary>
    private static string? Usual(CaseRanking ranking, string candidate, string traitId)
    {
        var trait = ranking.Guide.Guide.FindTrait(traitId);
        if (trait is null) return null;
        if (trait.Kind == TraitKind.Measured)
        {
            return ranking.Guide.UsualRange(candidate, null, traitId) is { } range
                ? Say[$"8 in 10 measure {SignificantFigures.Round(range.Low, 3):0.###} to {SignificantFigures.Round(range.High, 3):0.###} {Measures.Unit(trait.Unit, range.Low, range.High)}"]
                : Say["not known"];
        }
        if (ranking.Guide.Frequencies(candidate, null, traitId) is not { } shares) return Say["not known"];
        var said = ranking.Evidence.Answers.Where(a => a.Trait == traitId).SelectMany(a => a.States).ToHashSet();
        var share = trait.States.Select((s, i) => said.Contains(s.Id) ? shares[i] : 0).Sum();
        return Say[$"{OddsWords.Percent(Math.Min(share, 1))} of plants show this"];
    }

    /// <summary>What was answered, in the reader's language; the reason itself says it in English.</summary>
    public static string Said(Reason reason, CaseRanking ranking)
    {
        if (ranking.Guide.Guide.FindTrait(reason.Trait) is not { } trait) return reason.Said;
        var said = ranking.Evidence.Answers.Where(a => a.Trait == trait.Id)
            .Select(a => AnswerWords.Or(a.Bands.Count > 0 ? a.Bands.Select(b => Said(b, trait.Unit)) : a.States.Select((s, i) => trait.FindState(s)?.Name is not { } name ? s : i == 0 ? name : Lower(name))))
            .Distinct().Order(StringComparer.Ordinal).ToList();
        return said.Count == 0 ? reason.Said : string.Join("; ", said);
    }

    private static string Said(Band band, string? unit)
    {
        if (band.Low == band.High) return string.Create(CultureInfo.CurrentCulture, $"{SignificantFigures.Round(band.Low, 4):0.###} {Measures.Unit(unit, band.Low)}");
        if (double.IsInfinity(band.High)) return Say[$"{SignificantFigures.Round(band.Low, 4):0.###} {Measures.Unit(unit, band.Low)} or more"];
        return band.Low == 0 ? Say[$"{SignificantFigures.Round(band.High, 4):0.###} {Measures.Unit(unit, band.High)} or less"] : Say[$"{SignificantFigures.Round(band.Low, 4):0.###} to {SignificantFigures.Round(band.High, 4):0.###} {Measures.Unit(unit, band.Low, band.High)}"];
    }

    private static string Lower(string text) => text.Length > 1 && (char.IsLower(text[1]) || text[1] == ' ') ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
