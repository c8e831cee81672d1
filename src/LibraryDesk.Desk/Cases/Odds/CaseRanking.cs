using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Desk.Cases.Odds;

/// <summary>How one guide version reads a case. What costs more than the odds themselves is reckoned when first asked for.</summary>
/// <param name="parts">Ids of the parts the plant carries at its latest look; empty when not said yet.</param>
public sealed class CaseRanking(
    long caseId, CompiledGuide guide, Evidence evidence, CaseOrigin origin, IReadOnlySet<string> parts)
{
    private LookPlan? _plan;
    private Typicality? _typicality;

    public long CaseId => caseId;

    public CompiledGuide Guide => guide;

    public Evidence Evidence => evidence;

    public CaseOrigin Origin => origin;

    public Prior Prior => origin.Prior;

    /// <summary>Packets that the origin clues name.</summary>
    public IReadOnlyList<CluePacket> Packets => origin.Packets;

    public IReadOnlySet<string> Parts => parts;

    public Ranking Ranking { get; } = Ranker.Rank(guide, evidence, origin.Prior);

    /// <summary>The likeliest candidate.</summary>
    public RankedCandidate Leader => Ranking.Candidates[0];

    /// <summary>The one behind it.</summary>
    public RankedCandidate RunnerUp => Ranking.Candidates[1];

    /// <summary>What to look at now and what is worth waiting for. Until the parts are said, all count as there.</summary>
    public LookPlan Plan => _plan ??= LookPlanner.Plan(guide, evidence, Prior, parts.Count == 0 ? null : parts);

    /// <summary>What speaks for the leader against the one behind it.</summary>
    public ReasonTable Reasons => ReasonFinder.Between(guide, evidence, Prior, Leader.Id, RunnerUp.Id)!;

    /// <summary>How ordinary the answers are for the leader.</summary>
    public Typicality Typicality => _typicality ??= TypicalityFinder.Of(guide, evidence, Prior, Leader.Id)!;

    /// <summary>The candidate as the guide describes it.</summary>
    public Candidate Describe(string candidateId) => guide.Guide.FindCandidate(candidateId)!;
}
