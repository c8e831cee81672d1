using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Web.Shared.Odds;
using static LibraryDesk.Web.Features.Cases.CasesText;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>A ranking as lines to show. All lines together hold the twenty seeds.</summary>
internal static class OddsLines
{
    /// <summary>The first candidates by name and the rest in one line.</summary>
    public static IReadOnlyList<OddsLine> Short(CaseRanking ranking, int named) => Lines(ranking, named, exact: false);

    /// <summary>Every candidate with a seed, the rest in one line, exact figures for all.</summary>
    public static IReadOnlyList<OddsLine> Full(CaseRanking ranking) =>
        Lines(ranking, Math.Clamp(ranking.Ranking.Candidates.Count(c => c.Odds.Seeds > 0), 2, 6), exact: true);

    /// <summary>The odds of some earlier ranking for the candidates that lead now, e.g. "9, 7 and 4".</summary>
    public static string InWords(CaseRanking earlier, CaseRanking now)
    {
        var named = now.Ranking.Candidates.Take(2).Select(c => earlier.Ranking.Candidates.First(e => e.Id == c.Id).Odds.Seeds).ToList();
        var rest = earlier.Ranking.Candidates.Sum(c => c.Odds.Seeds) - named.Sum();
        return Say[$"{named[0]}, {named[1]} and {rest}"];
    }

    /// <summary>"17 in 20" in the reader's language.</summary>
    public static string Words(OddsInTwenty odds) => OddsWords.For(odds.IsMoreThanNineteen ? OddsWords.Cap + 1 : odds.Seeds);

    /// <summary>Odds that were kept, in the reader's language.</summary>
    public static string Words(OddsThen.Entry then) => OddsWords.For(then.IsMoreThanNineteen ? OddsWords.Cap + 1 : then.Seeds);

    /// <summary>"C. baccatum", for the thumb bar alone.</summary>
    public static string Abbreviated(RankedCandidate candidate)
    {
        var words = candidate.Name.Split(' ');
        return words.Length == 2 && char.IsLower(words[1][0]) && IsLatin(candidate.Kind) ? $"{words[0][0]}. {words[1]}" : candidate.Name;
    }

    public static bool IsLatin(CandidateKind kind) => kind != CandidateKind.SomethingElse;

    private static List<OddsLine> Lines(CaseRanking ranking, int named, bool exact)
    {
        var all = ranking.Ranking.Candidates;
        var lines = all.Take(named).Select(c => new OddsLine(c.Name, c.Odds.Seeds)
        {
            Scientific = IsLatin(c.Kind),
            Common = exact ? Sentence(ranking.Describe(c.Id).Common) : null,
            Share = exact ? c.Probability : null,
            Words = c.Odds.IsMoreThanNineteen ? Words(c.Odds) : null,
        }).ToList();
        var rest = all.Skip(named).ToList();
        if (rest.Count == 0) return lines;
        lines.Add(new OddsLine(Say["Any other"], rest.Sum(c => c.Odds.Seeds))
        {
            Scientific = false,
            Common = exact ? RestWords(rest) : null,
            Share = exact ? rest.Sum(c => c.Probability) : null,
        });
        return lines;
    }

    private static string RestWords(List<RankedCandidate> rest)
    {
        var species = rest.Count(c => c.Kind == CandidateKind.Species);
        var alikes = rest.Count(c => c.Kind == CandidateKind.LookAlike);
        var words = new List<string>();
        if (species > 0) words.Add(Say[$"{species} more species"]);
        if (alikes > 0) words.Add(Say.Count(alikes, $"{alikes} look-alike", $"{alikes} look-alikes"));
        if (rest.Exists(c => c.Kind == CandidateKind.SomethingElse)) words.Add(Say["what the guide does not hold"]);
        return Sentence(words.Count == 2 ? Say[$"{words[0]} and {words[1]}"] : string.Join(", ", words)) ?? "";
    }

    private static string? Sentence(string? text) => string.IsNullOrEmpty(text) ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
