using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>How many holds were lifted.</summary>
public sealed record HoldsLifted(int Count);

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

    /// <summary>Lifts several holds for one reason, all or none, such as those of recalls that were started together. Holds that were lifted before stay as they are.</summary>
    /// <returns>How many were lifted.</returns>
    public Task<Outcome<HoldsLifted>> RunAsync(Actor actor, IReadOnlyList<long> holdIds, string? why, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(holdIds);
        return actor.IsLibrarian
            ? ledger.RecordAsync<HoldsLifted>(actor, async work =>
            {
                var lifted = 0;
                foreach (var id in holdIds.Distinct())
                {
                    if (!(await work.HoldAsync(id)).TryGet(out var hold, out var noHold)) return noHold;
                    if (!hold.Stands) continue;
                    if (!HoldRules.Release(hold, work.Today, why, work.Today).TryGet(out var released, out var no)) return no;

                    work.Append(released);
                    lifted++;
                }

                return lifted > 0 ? new HoldsLifted(lifted) : FindingRefusals.NoHold;
            }, stop)
            : Task.FromResult<Outcome<HoldsLifted>>(PeopleRefusals.LibrariansOnly);
    }
}
