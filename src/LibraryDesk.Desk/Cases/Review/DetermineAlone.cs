using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A librarian's own determination.</summary>
/// <param name="VarietyName">Null or empty for a species.</param>
/// <param name="PacketCode">The packet of the case's origin clues that gives the variety; null or empty without one.</param>
/// <param name="Grounds">Why, in words that others can follow.</param>
/// <param name="IsSure">True when determining it against the odds or a deciding trait is said to be meant.</param>
public sealed record DeterminationAlone(NamedTaxon Taxon, string? VarietyName, string? PacketCode, string? Grounds, bool IsSure = false);

/// <summary>Lets a librarian determine a case alone, with stated grounds. The same rules guard it: never a variety from looks.</summary>
public sealed class DetermineAlone(CaseTurn turn, ReadTraits traits, TimeProvider clock)
{
    /// <summary>Shortest grounds, in characters: about one sentence. The desk's own setting, no source.</summary>
    public const int LeastGrounds = 30;

    public Task<Outcome<DeterminationRow>> RunAsync(Actor actor, long caseId, DeterminationAlone asked, CancellationToken stop) =>
        turn.TakeAsync<DeterminationRow>(caseId, async hand =>
        {
            if (ReviewRules.MayDetermineAlone(actor, hand.Case) is { } no) return no;
            var said = await traits.SayAsync(hand, stop);
            var grounds = ReviewText.Kept(asked.Grounds);
            var wanted = new DeterminationWanted(asked.Taxon, ReviewText.Kept(asked.VarietyName), ReviewText.Kept(asked.PacketCode));

            if (DeterminationRules.Check(wanted, hand.Guide.Guide, said.Origins) is { } forbidden) return forbidden;
            if ((grounds?.Length ?? 0) < LeastGrounds) return ReviewRefusals.GroundsMissing(LeastGrounds);
            if (grounds!.Length > ReviewRefusals.LongestNote) return ReviewRefusals.NoteTooLong;

            if (!asked.IsSure && Against(asked.Taxon.Taxon, said.Traits, hand.Guide.Guide) is { } doubt) return doubt;

            // A species keeps the packet beside it only where the packet's own name agrees; else the clue on the case says it.
            var origin = wanted.VarietyName is not null || DeterminationRules.Agrees(wanted, said.Origins) ? wanted.PacketCode : null;
            var decided = new Decided(asked.Taxon, grounds, said.OddsJson, wanted.VarietyName, origin, actor.UserId);
            return await DecideCase.WriteAsync(hand, decided, clock.GetUtcNow(), stop);
        }, stop);

    private static Refusal? Against(string taxon, TraitsSay traits, CropGuide guide)
    {
        var name = guide.FindCandidate(taxon)!.Name;
        if (traits.Against(taxon) is { Count: > 0 } deciding)
            return new(ReviewRefusals.AgainstTheTraitsCode, $"What was seen decides against {name}: {string.Join(", ", deciding)}. Look again at that; if it is meant, say so and say why in the grounds.") { MayInsist = true };
        return traits.OddsOf(taxon) < CaseRules.MuchBelow
            ? new(ReviewRefusals.AgainstTheTraitsCode, $"By what was seen, {name} has under 1 in 20. If it is meant, say so and say why in the grounds.") { MayInsist = true }
            : null;
    }
}
