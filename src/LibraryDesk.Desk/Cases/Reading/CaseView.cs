using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Reading;

/// <summary>A case as its page shows it. Rows are read for showing only.</summary>
/// <param name="SpeaksForOwner">True for the owner and whoever filed it for them.</param>
/// <param name="Ranking">Null while the odds are kept from a reader who could still give an opinion.</param>
/// <param name="Looks">Newest first.</param>
/// <param name="Clues">Origin clues that stand, in order.</param>
/// <param name="Requests">Looks that the desk asked for and that are still open.</param>
/// <param name="Determination">The one that stands; null without.</param>
/// <param name="Opinions">Opinions sealed in this round.</param>
/// <param name="LastEvent">Number of the newest line of its history, for noticing a change.</param>
/// <param name="NewerVersion">The guide version in use, where the case could be moved to it by this reader; null otherwise.</param>
public sealed record CaseView(
    CaseRow Case,
    CompiledGuide Guide,
    bool SpeaksForOwner,
    CaseRanking? Ranking,
    IReadOnlyList<LookView> Looks,
    IReadOnlyList<OriginClueRow> Clues,
    IReadOnlyList<LookRequestRow> Requests,
    DeterminationRow? Determination,
    int Opinions,
    int OpinionsNeeded,
    long LastEvent,
    string? NewerVersion = null)
{
    public bool MayChange => SpeaksForOwner && !CaseAccess.IsFinished(Case);

    /// <summary>The latest look.</summary>
    public LookView Latest => Looks[0];

    /// <summary>Answers of the owner's side that stand, over all looks.</summary>
    public IEnumerable<AnswerRow> OwnAnswers => Looks.SelectMany(l => l.Answers).Where(a => !a.ByDesk);
}

/// <summary>One look with what was kept at it.</summary>
/// <param name="Answers">Answers that stand, in order.</param>
/// <param name="Photos">Photos not removed, in order.</param>
/// <param name="Before">Odds before this look; null while the odds are kept from the reader.</param>
/// <param name="After">Odds with this look and those before it; null while the odds are kept from the reader.</param>
public sealed record LookView(
    LookRow Look, IReadOnlySet<string> Parts, IReadOnlyList<AnswerRow> Answers, IReadOnlyList<PhotoRow> Photos, CaseRanking? Before, CaseRanking? After);
