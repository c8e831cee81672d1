using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Takes down a germination test of a lot.</summary>
public sealed class TestGermination(SeedLedger ledger)
{
    /// <param name="actor">A volunteer or librarian.</param>
    /// <param name="lotCode">The lot.</param>
    /// <param name="replicates">Sown and germinated; one for a home test.</param>
    /// <param name="readOn">The day of the last count; null for today.</param>
    /// <param name="days">Days from sowing; null when not told.</param>
    /// <param name="takeFromLot">True when the seeds leave the lot now; false when they were set aside before.</param>
    /// <param name="isSure">True when a test that looks like a slip is said to be meant.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<TestId>> RunAsync(Actor actor, string? lotCode, IReadOnlyList<TestReplicate> replicates, DateOnly? readOn, int? days, bool takeFromLot, bool isSure, CancellationToken stop) =>
        actor.IsVolunteer
            ? ledger.RecordAsync<TestId>(actor, async work =>
            {
                if (!(await work.LotAsync(lotCode)).TryGet(out var lot, out var noLot)) return noLot;

                var lotId = lot.Id.Value;
                var before = await work.Db.Set<GerminationTestRow>().AsNoTracking().Where(test => test.LotId == lotId && !test.IsVoid).ToListAsync(work.Stop);
                var decided = StockRules.Test(work.Ids.Next<TestId>(), lot, [.. before.Select(test => test.ToRecord())], replicates, readOn ?? work.Today, days, takeFromLot, work.Today, isSure);
                if (!decided.TryGet(out var tested, out var no)) return no;

                work.Append(tested);
                return tested.Test;
            }, stop)
            : Task.FromResult<Outcome<TestId>>(PeopleRefusals.VolunteersOnly);
}
