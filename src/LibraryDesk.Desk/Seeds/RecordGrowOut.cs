using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A growing for seed.</summary>
/// <param name="Code">The packet, or the lot when the library grows it itself.</param>
/// <param name="Sown">How much of a lot was sown; null for a packet, which counts as sown whole.</param>
/// <param name="SownOn">The day; null for today.</param>
/// <param name="Facts">What is known of it so far.</param>
/// <param name="GrowerId">Who grows it; null for the borrower of a packet on loan, and for a lot when not known.</param>
public sealed record Sowing(string? Code, Quantity? Sown, DateOnly? SownOn, GrowOutFacts Facts, Guid? GrowerId = null);

/// <summary>Takes down that seed was sown for seed.</summary>
public sealed class RecordGrowOut(SeedLedger ledger)
{
    public const string HowMuchCode = "sowing.how-much";

    public Task<Outcome<GrowOutId>> RunAsync(Actor actor, Sowing sowing, CancellationToken stop) =>
        actor.IsSignedIn
            ? ledger.RecordAsync(actor, work => RecordAsync(work, actor, sowing), stop)
            : Task.FromResult<Outcome<GrowOutId>>(PeopleRefusals.SignInFirst);

    private static async Task<Outcome<GrowOutId>> RecordAsync(SeedWork work, Actor actor, Sowing sowing)
    {
        var growOut = work.Ids.Next<GrowOutId>();
        var on = sowing.SownOn ?? work.Today;
        var grower = sowing.GrowerId is { } named ? new PersonId(named) : (PersonId?)null;
        if ((sowing.Code ?? "").TrimStart().StartsWith('L') || (sowing.Code ?? "").TrimStart().StartsWith('l'))
        {
            if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
            if (!(await work.LotAsync(sowing.Code)).TryGet(out var lot, out var noLot)) return noLot;
            if (sowing.Sown is not { } sown) return new Refusal(HowMuchCode, "Say how much of the lot was sown.");
            if (!GrowingRules.SowLot(growOut, lot, sown, grower, on, sowing.Facts, work.Today).TryGet(out var ofLot, out var noSowing)) return noSowing;
            work.Append(ofLot);
            return growOut;
        }

        if (!(await work.PacketAsync(sowing.Code)).TryGet(out var packet, out var noPacket)) return noPacket;
        var loan = packet.Loan is { } id && work.State.Find(id) is { IsOpen: true } open ? open : null;
        if (!actor.IsLibrarian && loan?.Borrower != work.Person) return PeopleRefusals.NotYours;
        if (!GrowingRules.SowPacket(growOut, packet, loan, grower ?? loan?.Borrower, on, sowing.Facts, work.Today).TryGet(out var grown, out var no)) return no;
        work.Append(grown);
        return growOut;
    }
}
