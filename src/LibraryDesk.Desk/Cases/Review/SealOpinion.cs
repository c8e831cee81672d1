using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>An opinion as the form gives it.</summary>
/// <param name="InTwenty">The volunteer's own odds, 0 to 20; null where they would rather not say.</param>
/// <param name="Note">What settles it for them; null or empty for nothing.</param>
public sealed record OpinionWritten(NamedTaxon Taxon, int? InTwenty, string? Note);

/// <summary>Takes a volunteer's first opinion, given without odds or other opinions in sight, and seals it.</summary>
public sealed class SealOpinion(CaseTurn turn, TimeProvider clock)
{
    public Task<Outcome<OpinionRow>> RunAsync(Actor actor, long caseId, OpinionWritten written, CancellationToken stop) =>
        turn.TakeAsync<OpinionRow>(caseId, async hand =>
        {
            if (ReviewRules.MayGiveOpinion(actor, hand.Case) is { } no) return no;
            var opinions = await hand.OpinionsAsync(stop);

            if (opinions.Any(o => o.VolunteerId == actor.UserId)) return ReviewRefusals.AlreadySealed;
            if (Fault(written, hand.Guide.Guide) is { } fault) return fault;

            var now = clock.GetUtcNow();
            var opinion = new OpinionRow
            {
                CaseId = hand.Case.Id,
                Round = hand.Case.Round,
                VolunteerId = actor.UserId!.Value,
                SealedAt = now,
                SealedTaxon = written.Taxon.Taxon,
                SealedQualifier = written.Taxon.Tells ? written.Taxon.Qualifier : Qualifiers.None,
                SealedInTwenty = written.Taxon.Tells ? written.InTwenty : null,
                SealedNote = ReviewText.Kept(written.Note),
            };
            hand.Db.Add(opinion);
            hand.Tell(ReviewEvents.OpinionSealed, actor.UserId, null, now);
            return opinion;
        }, stop);

    internal static Refusal? Fault(OpinionWritten written, CropGuide guide)
    {
        if (written.Taxon.Tells && guide.FindCandidate(written.Taxon.Taxon) is null) return ReviewRefusals.UnknownTaxon;
        if (!Qualifiers.All.Contains(written.Taxon.Qualifier)) return ReviewRefusals.UnknownQualifier;
        if (written.InTwenty is < 0 or > 20) return ReviewRefusals.OddsRange;
        return written.Note?.Length > ReviewRefusals.LongestNote ? ReviewRefusals.NoteTooLong : null;
    }
}
