using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Web.Features.Identify;

/// <summary>A ranking, in the shape that <c>desk identify</c> prints.</summary>
public sealed record IdentifyResponse(
    string Case,
    IReadOnlyList<IdentifyResponse.CautionDue> Cautions,
    IReadOnlyList<IdentifyResponse.CandidateOdds> Candidates,
    IReadOnlyList<IdentifyResponse.FormOdds> Forms,
    IReadOnlyList<IdentifyResponse.LookAhead> BestNextLooks,
    IReadOnlyList<IdentifyResponse.LookAhead> WorthWaitingFor,
    IdentifyResponse.HowTypical Typicality,
    IdentifyResponse.GuideUsed Guide)
{
    private const int MostLooks = 3;

    public static IdentifyResponse Of(string name, CompiledGuide guide, Evidence evidence, Prior prior, IReadOnlySet<string>? parts)
    {
        var ranking = Ranker.Rank(guide, evidence, prior);
        var typicality = TypicalityFinder.Of(guide, evidence, prior, ranking.Candidates[0].Id)!;
        var plan = LookPlanner.Plan(guide, evidence, prior, parts, MostLooks, withOutlooks: false);
        return new IdentifyResponse(
            name,
            [.. DueCaution.Of(guide.Guide, ranking).Select(d => new CautionDue(d.Caution.Id, d.Caution.Title, d.Caution.Text, d.Candidate.Id))],
            [.. ranking.Candidates.Select(c => new CandidateOdds(c.Id, c.Name, c.Probability, c.Odds.ToString()))],
            [.. ranking.Forms.Select(f => new FormOdds(f.Candidate, f.Form, f.Name, f.Probability))],
            Looks(plan.Now),
            Looks(plan.WorthWaitingFor),
            new HowTypical(typicality.Candidate, typicality.Tail, Word(typicality.Word), typicality.IsExact, typicality.IfWrong),
            new GuideUsed(ranking.GuideId, ranking.GuideVersion));
    }

    private static List<LookAhead> Looks(IReadOnlyList<NextLook> looks) =>
        [.. looks.Select(l => new LookAhead(l.Trait, l.Question, l.Part, l.Bits, l.BitsPerEffort, l.IsSecondLook))];

    private static string Word(TypicalityWord word) => word switch
    {
        TypicalityWord.Ordinary => "ordinary",
        TypicalityWord.Unusual => "unusual",
        _ => "very unusual",
    };

    /// <summary>A caution to be shown before the odds: the plant could be a look-alike that harms, at 1 in 20 or above.</summary>
    /// <param name="Candidate">The look-alike it is about.</param>
    public sealed record CautionDue(string Id, string Title, string Text, string Candidate);

    /// <param name="Probability">0 to 1; all candidates sum to 1.</param>
    /// <param name="Odds">In words, such as "17 in 20".</param>
    public sealed record CandidateOdds(string Id, string Name, double Probability, string Odds);

    /// <param name="Form">Form id; null where the candidate is one form, itself.</param>
    public sealed record FormOdds(string Candidate, string? Form, string Name, double Probability);

    /// <param name="Bits">Expected drop of what is open between the candidates.</param>
    public sealed record LookAhead(string Trait, string Question, string Part, double Bits, double BitsPerEffort, bool SecondLook);

    /// <param name="Tail">How often a plant of this candidate fits as badly or worse, 0 to 1.</param>
    /// <param name="IfWrong">Trait whose answer, if wrong, would make the case ordinary; null for none.</param>
    public sealed record HowTypical(string Candidate, double Tail, string Word, bool Exact, string? IfWrong);

    public sealed record GuideUsed(string Id, string Version);
}
