namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// Ends a volunteer's review: the sealed opinion is confirmed or changed, both are kept, and the case is decided in the same transaction.
/// It may be done again while the case is open, for instance after a new look.
/// </summary>
public sealed class FinishOpinion(CaseTurn turn, DecideCase decide, TimeProvider clock)
{
    public Task<Outcome<CaseDecision>> RunAsync(
        Actor actor, long caseId, long shownRevision, NamedTaxon final, string? note, CancellationToken stop) =>
        turn.TakeAsync<CaseDecision>(caseId, async hand =>
        {
            if (ReviewRules.MayGiveOpinion(actor, hand.Case) is { } no) return no;
            var opinions = await hand.OpinionsAsync(stop);
            var mine = opinions.SingleOrDefault(o => o.VolunteerId == actor.UserId);

            if (mine is null) return ReviewRefusals.SealFirst;
            if (mine.Revision != shownRevision) return ReviewRefusals.ChangedMeanwhile;
            if (SealOpinion.Fault(new OpinionWritten(final, null, note), hand.Guide.Guide) is { } fault) return fault;

            var now = clock.GetUtcNow();
            mine.FinalAt = now;
            mine.FinalTaxon = final.Taxon;
            mine.FinalQualifier = final.Tells ? final.Qualifier : Qualifiers.None;
            mine.FinalNote = ReviewText.Kept(note);
            hand.Tell(ReviewEvents.OpinionFinished, actor.UserId, null, now);
            return await decide.InAsync(hand, opinions, now, stop);
        }, stop);
}
