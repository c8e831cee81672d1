using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Sends part of a lot, or a whole packet, on to another library.</summary>
public sealed class SendSeedOn(SeedLedger ledger)
{
    public const string HowMuchCode = "sending.how-much";

    public Task<Outcome<TransferredOut>> RunAsync(Actor actor, string? code, Quantity? amount, string? library, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<TransferredOut>(actor, async work =>
            {
                if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;
                var holds = await work.HoldsAboveAsync(seed.Node);

                var packet = work.State.Find(new PacketId(seed.Node.Value));
                if (packet is null && amount is null) return new Refusal(HowMuchCode, "Say how much is sent.");
                var decided = packet is not null
                    ? StockRules.SendOn(packet, holds, library, work.Today, work.Today)
                    : StockRules.SendOn(seed, holds, amount!.Value, library, work.Today, work.Today);
                if (!decided.TryGet(out var sent, out var no)) return no;

                work.Append(sent);
                return sent;
            }, stop)
            : Task.FromResult<Outcome<TransferredOut>>(PeopleRefusals.LibrariansOnly);
}
