using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A case as a reviewing volunteer sees it. What is covered is not in it at all.</summary>
/// <param name="Answers">Answers that stand: the member's and the reader's own; other people's only once opened.</param>
/// <param name="Mine">Null before the own seal.</param>
/// <param name="Opinions">Number of opinions of this round.</param>
/// <param name="Open">Null before the own seal.</param>
/// <param name="Determination">The standing determination; null while there is none.</param>
public sealed record ReviewView(
    long CaseId,
    string Title,
    CaseState State,
    CompiledGuide Guide,
    IReadOnlyList<LookSeen> Looks,
    IReadOnlyList<PhotoSeen> Photos,
    IReadOnlyList<AnswerSeen> Answers,
    IReadOnlyList<RequestSeen> Requests,
    OpinionSeen? Mine,
    int Opinions,
    OpenedReview? Open,
    DeterminationRow? Determination)
{
    /// <summary>True while opinions are taken.</summary>
    public bool IsOpen => State is CaseState.Open or CaseState.WaitingForLook;
}

/// <summary>What the own seal opened.</summary>
/// <param name="Others">Other volunteers' opinions; null until a second opinion is sealed.</param>
/// <param name="Wanted">Why one more opinion is wanted; null where none is.</param>
public sealed record OpenedReview(
    CaseRanking Read,
    TraitsSay Traits,
    IReadOnlyList<SuggestionSeen> Suggestions,
    IReadOnlyList<OriginClueRow> Clues,
    IReadOnlyList<OpinionSeen>? Others,
    AnotherWanted? Wanted);

/// <summary>One look: when, and which parts the plant carried.</summary>
public sealed record LookSeen(long Id, int Number, DateOnly Date, IReadOnlyList<string> Parts, string? Note);

/// <summary>One photo of a look.</summary>
public sealed record PhotoSeen(Guid Id, int Look, string Part, int Width, int Height, string? Caption, bool IsDrawing);

/// <summary>Whose answer it is, as far as a volunteer may know.</summary>
public enum Scorer
{
    TheMember,
    Me,
    AnotherVolunteer,
}

/// <summary>One standing answer.</summary>
public sealed record AnswerSeen(AnswerRow Row, Scorer By, int Look);

/// <summary>A request for a look that is still open.</summary>
public sealed record RequestSeen(long Id, string Message, DateTimeOffset At, bool IsMine);

/// <summary>One opinion, without its giver's name: volunteers review cases, not each other.</summary>
/// <param name="Final">Null while in review.</param>
public sealed record OpinionSeen(
    DateTimeOffset SealedAt, NamedTaxon Sealed, int? InTwenty, string? SealedNote, DateTimeOffset? FinalAt, NamedTaxon? Final, string? FinalNote, long Revision);

/// <summary>One standing suggestion.</summary>
public sealed record SuggestionSeen(long Id, Scorer By, string Taxon, string? FormId, string? VarietyName, string Reason, DateTimeOffset At);
