using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>A reason as a line of the ledger, opening to its figures and sources.</summary>
internal static class ReasonLines
{
    public static EvidenceLine Of(Reason reason, CaseView view, CaseRanking ranking) => new($"{reason.Name}: {Lower(reason.Said)}", Weight(reason.Word))
    {
        Note = WhoWhen(reason.Trait, view),
        Facts = [.. Facts(reason, ranking)],
    };

    public static string Decibans(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0} decibans");

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
        var who = first.ByDesk ? "A volunteer" : view.SpeaksForOwner ? "You" : "The member";
        var sure = first.Sureness switch { "fairly" => ", fairly clear", "faint" => ", faint", _ => "" };
        var more = answers.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $", and {answers.Count - 1} more") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{who}, {date:d MMMM}{sure}{more}");
    }

    private static IEnumerable<Fact> Facts(Reason reason, CaseRanking ranking)
    {
        yield return new Fact("Answered", reason.Said);
        foreach (var candidate in new[] { ranking.Leader, ranking.RunnerUp })
        {
            if (Usual(ranking, candidate, reason.Trait) is { } usual) yield return new Fact(candidate.Name, usual);
        }
        yield return new Fact("Weight", Decibans(reason.Decibans));
        var sources = reason.SourcesA.Concat(reason.SourcesB).Distinct().Select(id => ranking.Guide.Guide.FindSource(id)?.Citation ?? id).ToList();
        yield return new Fact(sources.Count == 1 ? "Source" : "Sources", sources.Count == 0 ? "No published figure; counted as neutral" : string.Join("; ", sources));
        yield return new Fact("Guide", $"{ranking.Guide.Guide.Crop}, version {ranking.Guide.Guide.Version}");
    }

    /// <summary>How often a candidate shows what was answered, or its usual range.</summary>
    private static string? Usual(CaseRanking ranking, RankedCandidate candidate, string traitId)
    {
        var trait = ranking.Guide.Guide.FindTrait(traitId);
        if (trait is null) return null;
        if (trait.Kind == TraitKind.Measured)
        {
            return ranking.Guide.UsualRange(candidate.Id, null, traitId) is { } range
                ? string.Create(CultureInfo.InvariantCulture, $"8 in 10 measure {range.Low:G3} to {range.High:G3} {trait.Unit}")
                : "not known";
        }
        if (ranking.Guide.Frequencies(candidate.Id, null, traitId) is not { } shares) return "not known";
        var said = ranking.Evidence.Answers.Where(a => a.Trait == traitId).SelectMany(a => a.States).ToHashSet();
        var share = trait.States.Select((s, i) => said.Contains(s.Id) ? shares[i] : 0).Sum();
        return $"{OddsWords.Percent(Math.Min(share, 1))} of plants show this";
    }

    private static string Lower(string text) => text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
