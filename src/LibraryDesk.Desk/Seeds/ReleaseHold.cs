using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Lifts a hold; lifting the hold of a recall closes the recall.</summary>
public sealed class ReleaseHold(SeedLedger ledger)
{
    public Task<Outcome<Hold>> RunAsync(Actor actor, long holdId, string? why, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<Hold>(actor, async work =>
            {
                if (!(await work.HoldAsync(holdId)).TryGet(out var hold, out var noHold)) return noHold;

                if (!HoldRules.Release(hold, work.Today, why, work.Today).TryGet(out var released, out var no)) return no;

                work.Append(released);
                return work.State.Find(hold.Id)!;
            }, stop)
            : Task.FromResult<Outcome<Hold>>(PeopleRefusals.LibrariansOnly);
}
