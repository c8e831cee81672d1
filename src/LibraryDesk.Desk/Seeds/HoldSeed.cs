using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Stops the lending of an accession, a lot or a packet, and of everything made of it.</summary>
public sealed class HoldSeed(SeedLedger ledger)
{
    public Task<Outcome<HoldId>> RunAsync(Actor actor, string? code, HoldReason reason, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<HoldId>(actor, async work =>
            {
                if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;
                var holds = (await work.HoldsAboveAsync(seed.Node)).Where(hold => hold.Node == seed.Node).ToArray();

                if (!HoldRules.Hold(work.Ids.Next<HoldId>(), seed.Node, seed.Began, reason, holds, work.Today, work.Today, seed.IsVoid).TryGet(out var held, out var no)) return no;

                work.Append(held);
                return held.Hold;
            }, stop)
            : Task.FromResult<Outcome<HoldId>>(PeopleRefusals.LibrariansOnly);
}
