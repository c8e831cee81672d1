using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Takes back a request for a look: its asker may, and a librarian. The case goes on when it waits for nothing else.</summary>
public sealed class WithdrawLookRequest(CaseTurn turn, TimeProvider clock)
{
    public Task<Outcome<LookRequestRow>> RunAsync(Actor actor, long caseId, long requestId, CancellationToken stop) =>
        turn.TakeAsync<LookRequestRow>(caseId, async hand =>
        {
            if (ReviewRules.MayGiveOpinion(actor, hand.Case) is { } no) return no;
            var open = await hand.OpenRequestsAsync(stop);
            var request = open.SingleOrDefault(r => r.Id == requestId);

            if (request is null) return ReviewRefusals.NoSuchRequest;
            if (request.ById != actor.UserId && !actor.IsLibrarian) return PeopleRefusals.NotYours;

            var now = clock.GetUtcNow();
            request.WithdrawnAt = now;
            if (open.Count == 1)
            {
                if (hand.Case.State == CaseState.WaitingForLook) hand.MoveTo(CaseState.Open, now);
                await CaseOwner.AskedIsOverAsync(hand.Db, hand.Case, now, stop);
            }
            hand.Tell(ReviewEvents.LookRequestWithdrawn, actor.UserId, null, now);
            return request;
        }, stop);
}
