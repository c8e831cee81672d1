using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>A ranking as lines of the odds list.</summary>
internal static class OddsLines
{
    private const int Least = 3;

    /// <summary>Every candidate with a seed, and three at least.</summary>
    public static IReadOnlyList<OddsLine> Of(Ranking ranking, CropGuide guide) =>
    [
        .. ranking.Candidates.Where((candidate, index) => index < Least || candidate.Odds.Seeds > 0).Select(candidate =>
            new OddsLine(candidate.Name, candidate.Odds.Seeds)
            {
                Scientific = candidate.Kind != CandidateKind.SomethingElse,
                Common = guide.FindCandidate(candidate.Id)?.Common,
                Share = candidate.Probability,
                Words = candidate.Odds.ToString(),
            }),
    ];
}
