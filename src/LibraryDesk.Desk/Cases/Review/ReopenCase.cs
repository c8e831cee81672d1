using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// Opens a determined or closed case again, with the reason. A new round of opinions begins; the earlier determination is kept and
/// marked as superseded.
/// </summary>
public sealed class ReopenCase(CaseTurn turn, TimeProvider clock)
{
    /// <summary>Shortest reason, in characters.</summary>
    public const int LeastReason = 10;

    public Task<Outcome<CaseRow>> RunAsync(Actor actor, long caseId, string? reason, CancellationToken stop) =>
        turn.TakeAsync<CaseRow>(caseId, async hand =>
        {
            if (!CaseAccess.MaySee(actor, hand.Case)) return CaseRefusals.NotFound;
            if (hand.Case.State is not (CaseState.Determined or CaseState.Closed)) return ReviewRefusals.NotDetermined;
            var why = ReviewText.Kept(reason);
            if ((why?.Length ?? 0) < LeastReason) return ReviewRefusals.ReasonMissing(LeastReason);
            if (why!.Length > ReviewRefusals.LongestNote) return ReviewRefusals.NoteTooLong;

            var now = clock.GetUtcNow();
            foreach (var standing in await hand.Db.Set<DeterminationRow>().Where(d => d.CaseId == caseId && d.SupersededAt == null).ToListAsync(stop))
                standing.SupersededAt = now;
            hand.Case.Round++;
            hand.Case.ClosingNote = null;
            hand.MoveTo(CaseState.Open, now);
            hand.Tell(ReviewEvents.Reopened, actor.UserId, why, now);
            if (!CaseAccess.IsOwner(actor, hand.Case)) await CaseLetters.ReopenedAsync(hand, why, now, stop);
            return hand.Case;
        }, stop);
}
