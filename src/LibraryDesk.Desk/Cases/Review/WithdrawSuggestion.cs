using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Takes back one's own suggestion. The row stays, marked.</summary>
public sealed class WithdrawSuggestion(CaseTurn turn, TimeProvider clock)
{
    public Task<Outcome<SuggestionRow>> RunAsync(Actor actor, long caseId, long suggestionId, CancellationToken stop) =>
        turn.TakeAsync<SuggestionRow>(caseId, async hand =>
        {
            if (!CaseAccess.MaySee(actor, hand.Case)) return CaseRefusals.NotFound;
            var suggestion = await hand.Db.Set<SuggestionRow>()
                .SingleOrDefaultAsync(s => s.Id == suggestionId && s.CaseId == caseId && s.WithdrawnAt == null, stop);

            // A guest's suggestion has no person; the guest is who may see this case without an account.
            if (suggestion is null || suggestion.ById != actor.UserId) return ReviewRefusals.NoSuchSuggestion;

            var now = clock.GetUtcNow();
            suggestion.WithdrawnAt = now;
            hand.Tell(ReviewEvents.SuggestionWithdrawn, actor.UserId, null, now);
            return suggestion;
        }, stop);
}
