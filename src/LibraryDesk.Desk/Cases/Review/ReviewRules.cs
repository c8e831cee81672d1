using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Who may give an opinion on a case, and when.</summary>
public static class ReviewRules
{
    /// <summary>Null when the actor may give an opinion or work on this case now; else why not.</summary>
    public static Refusal? MayGiveOpinion(Actor actor, CaseRow row)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(row);
        // Who filed it at the counter is no reviewer either: filing shows the odds with every answer, so the opinion would not be unseen.
        return CaseAccess.WhyNotReview(actor, row) ?? (row.State is CaseState.Open or CaseState.WaitingForLook ? null : ReviewRefusals.NotOpen);
    }

    /// <summary>A librarian decides alone: never on an own case; one filed for a walk-in may be, the grounds are stated.</summary>
    public static Refusal? MayDetermineAlone(Actor actor, CaseRow row)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(row);
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (!CaseAccess.MaySee(actor, row)) return CaseRefusals.NotFound;
        if (CaseAccess.IsOwner(actor, row)) return ReviewRefusals.OwnCase;
        return row.State is CaseState.Open or CaseState.WaitingForLook ? null : ReviewRefusals.NotOpen;
    }

    /// <summary>
    /// What is open to a volunteer. Odds, reasons and suggestions open with the own seal; other opinions only when a second one is sealed.
    /// </summary>
    public static Opened OpenTo(Guid volunteer, IReadOnlyCollection<Guid> sealedBy)
    {
        ArgumentNullException.ThrowIfNull(sealedBy);
        var mine = sealedBy.Contains(volunteer);
        return new Opened(mine, mine && sealedBy.Count > 1);
    }
}

/// <summary>What a volunteer may see of a case besides the plant itself.</summary>
/// <param name="Odds">The ranking, its reasons, the origin clues, suggestions and other people's scores.</param>
/// <param name="Opinions">What the other volunteers said.</param>
public readonly record struct Opened(bool Odds, bool Opinions);
