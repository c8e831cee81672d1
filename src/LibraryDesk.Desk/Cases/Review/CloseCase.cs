using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// Ends a case. Its owner may withdraw it at any time; the desk closes it with what was learned: a volunteer once it is determined, a
/// librarian also when nothing more will come of it.
/// </summary>
public sealed class CloseCase(CaseTurn turn, TimeProvider clock)
{
    /// <summary>Shortest note of what was learned, in characters.</summary>
    public const int LeastNote = 10;

    public Task<Outcome<CaseRow>> RunAsync(Actor actor, long caseId, string? learned, CancellationToken stop) =>
        turn.TakeAsync<CaseRow>(caseId, async hand =>
        {
            if (!CaseAccess.MaySee(actor, hand.Case)) return CaseRefusals.NotFound;
            if (hand.Case.State == CaseState.Closed) return ReviewRefusals.AlreadyClosed;
            var owns = CaseAccess.IsOwner(actor, hand.Case);
            if (!owns && !actor.IsLibrarian && hand.Case.State != CaseState.Determined) return ReviewRefusals.NotYoursToClose;
            var note = ReviewText.Kept(learned) ?? (owns ? ClosingNotes.Ended : null);
            if ((note?.Length ?? 0) < LeastNote) return ReviewRefusals.ReasonMissing(LeastNote);
            if (note!.Length > ReviewRefusals.LongestNote) return ReviewRefusals.NoteTooLong;

            var now = clock.GetUtcNow();
            foreach (var request in await hand.OpenRequestsAsync(stop)) request.WithdrawnAt = now;
            await CaseOwner.AskedIsOverAsync(hand.Db, hand.Case, now, stop);
            hand.Case.ClosingNote = note;
            hand.MoveTo(CaseState.Closed, now);
            hand.Tell(ReviewEvents.Closed, actor.UserId, note, now);
            return hand.Case;
        }, stop);
}
