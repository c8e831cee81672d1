using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Throws seed away: part of a lot or accession, or a whole packet.</summary>
public sealed class DiscardSeed(SeedLedger ledger)
{
    public const string HowMuchCode = "discard.how-much";

    /// <param name="actor">A librarian.</param>
    /// <param name="code">Of the lot, packet or accession.</param>
    /// <param name="amount">How much; null for a packet, which goes whole.</param>
    /// <param name="reason">Why.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<Discarded>> RunAsync(Actor actor, string? code, Quantity? amount, string? reason, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<Discarded>(actor, async work =>
            {
                if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;

                var packet = work.State.Find(new PacketId(seed.Node.Value));
                if (packet is null && amount is null) return new Refusal(HowMuchCode, "Say how much is thrown away.");
                var decided = packet is not null
                    ? StockRules.Discard(packet, work.Today, reason, work.Today)
                    : StockRules.Discard(seed, amount!.Value, work.Today, reason, work.Today);
                if (!decided.TryGet(out var discarded, out var no)) return no;

                work.Append(discarded);
                return discarded;
            }, stop)
            : Task.FromResult<Outcome<Discarded>>(PeopleRefusals.LibrariansOnly);
}
