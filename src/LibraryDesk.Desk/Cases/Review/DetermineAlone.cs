using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A librarian's own determination.</summary>
/// <param name="VarietyName">Null or empty for a species.</param>
/// <param name="PacketCode">The packet of the case's origin clues that gives the variety; null or empty without one.</param>
/// <param name="Grounds">Why, in words that others can follow.</param>
public sealed record DeterminationAlone(NamedTaxon Taxon, string? VarietyName, string? PacketCode, string? Grounds);

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

            var origin = wanted.VarietyName is null ? null : wanted.PacketCode;
            var decided = new Decided(asked.Taxon, grounds, said.OddsJson, wanted.VarietyName, origin, actor.UserId);
            return await DecideCase.WriteAsync(hand, decided, clock.GetUtcNow(), stop);
        }, stop);
}
