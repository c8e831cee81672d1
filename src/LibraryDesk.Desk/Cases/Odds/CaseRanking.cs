using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Desk.Cases.Odds;

/// <summary>How one guide version reads a case, with what the pages say about it.</summary>
/// <param name="PartsPresent">Ids of the parts the plant carries at its latest look; empty when not said yet.</param>
public sealed record CaseRanking(
    long CaseId, CompiledGuide Guide, Evidence Evidence, Prior Prior, Ranking Ranking, IReadOnlySet<string> PartsPresent)
{
    /// <summary>The likeliest candidate.</summary>
    public RankedCandidate Leader => Ranking.Candidates[0];
}
