using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>What somebody thinks it could be.</summary>
/// <param name="FormId">Form id of the candidate; null for the candidate as a whole.</param>
/// <param name="VarietyName">A variety that would fit; null for none. It is never more than that from looks.</param>
public sealed record SuggestionWritten(string Taxon, string? FormId, string? VarietyName, string? Reason);

/// <summary>
/// Takes a suggestion from anybody who may see the case. It is weighed by people, never multiplied into the odds, and volunteers see
/// it only after their own seal.
/// </summary>
public sealed class AddSuggestion(CaseTurn turn, TimeProvider clock)
{
    /// <summary>Shortest reason, in characters.</summary>
    public const int LeastReason = 8;

    private const int LongestVariety = 160;

    public Task<Outcome<SuggestionRow>> RunAsync(Actor actor, long caseId, SuggestionWritten written, CancellationToken stop) =>
        turn.TakeAsync<SuggestionRow>(caseId, async hand =>
        {
            if (!CaseAccess.MaySee(actor, hand.Case)) return CaseRefusals.NotFound;
            if (hand.Case.State is not (CaseState.Open or CaseState.WaitingForLook)) return ReviewRefusals.NotOpen;

            if (Fault(written, hand.Guide.Guide) is { } fault) return fault;

            var now = clock.GetUtcNow();
            var suggestion = new SuggestionRow
            {
                CaseId = hand.Case.Id,
                ById = actor.UserId,
                Taxon = written.Taxon,
                FormId = ReviewText.Kept(written.FormId),
                VarietyName = ReviewText.Kept(written.VarietyName),
                Reason = ReviewText.Kept(written.Reason)!,
                At = now,
            };
            hand.Db.Add(suggestion);
            hand.Tell(ReviewEvents.Suggested, actor.UserId, null, now);
            return suggestion;
        }, stop);

    private static Refusal? Fault(SuggestionWritten written, CropGuide guide)
    {
        var candidate = guide.FindCandidate(written.Taxon);
        if (candidate is null) return ReviewRefusals.UnknownTaxon;
        if (ReviewText.Kept(written.FormId) is { } form && candidate.Forms.All(f => f.Id != form)) return ReviewRefusals.UnknownForm;
        if (written.VarietyName?.Length > LongestVariety) return ReviewRefusals.VarietyTooLong;
        if ((ReviewText.Kept(written.Reason)?.Length ?? 0) < LeastReason) return ReviewRefusals.ReasonMissing(LeastReason);
        return written.Reason!.Length > ReviewRefusals.LongestNote ? ReviewRefusals.NoteTooLong : null;
    }
}
