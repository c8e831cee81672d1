using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A look that a volunteer wants.</summary>
/// <param name="TraitId">Trait to be answered; null when only a part or a photo is wanted.</param>
/// <param name="PartId">Part to be looked at; null when any.</param>
/// <param name="Message">In the volunteer's words; empty takes the guide's question for the trait.</param>
public sealed record LookWanted(string? TraitId, string? PartId, string? Message);

/// <summary>Asks the owner of a case for one more look. The case waits for it; opinions are still taken.</summary>
public sealed class AskForLook(CaseTurn turn, GuideShelf shelf, TimeProvider clock)
{
    private const int LongestMessage = 1000;

    public Task<Outcome<LookRequestRow>> RunAsync(Actor actor, long caseId, LookWanted wanted, CancellationToken stop) =>
        turn.TakeAsync<LookRequestRow>(caseId, async hand =>
        {
            if (ReviewRules.MayGiveOpinion(actor, hand.Case) is { } no) return no;

            if (!(await ResolveAsync(hand, wanted, stop)).TryGet(out var asked, out var fault)) return fault;

            var now = clock.GetUtcNow();
            var request = new LookRequestRow
            {
                CaseId = hand.Case.Id,
                ById = actor.UserId!.Value,
                TraitId = asked.TraitId,
                PartId = asked.PartId,
                Message = asked.Message!,
                At = now,
            };
            hand.Db.Add(request);
            hand.MoveTo(CaseState.WaitingForLook, now);
            hand.Tell(ReviewEvents.LookAsked, actor.UserId, request.Message, now);
            await CaseLetters.LookAskedAsync(hand, request.Message, now, stop);
            return request;
        }, stop);

    // What the volunteer leaves unsaid is put in the words of who is asked.
    private async Task<Outcome<LookWanted>> ResolveAsync(CaseInHand hand, LookWanted wanted, CancellationToken stop)
    {
        using var spoken = Languages.Speak(await CaseOwner.LanguageAsync(hand.Db, hand.Case, stop));
        return Resolve(wanted, (await shelf.GetAsync(hand.Case.GuideId, hand.Case.GuideVersion, stop)).Guide);
    }

    private static Outcome<LookWanted> Resolve(LookWanted wanted, CropGuide guide)
    {
        var message = ReviewText.Kept(wanted.Message);
        if (message?.Length > LongestMessage) return ReviewRefusals.NoteTooLong;
        var trait = wanted.TraitId is { Length: > 0 } id ? guide.FindTrait(id) : null;
        if (trait is { Asked: false }) return ReviewRefusals.NeverAsked;
        var part = guide.Parts.FirstOrDefault(p => p.Id == (trait?.Part ?? wanted.PartId));
        if (trait is null && part is null && message is null) return ReviewRefusals.NothingAsked;
        return new LookWanted(trait?.Id, part?.Id, message ?? trait?.Question ?? Say[$"A photo of the {part!.Name.ToLowerInvariant()}, close and sharp."]);
    }
}
