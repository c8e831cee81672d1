using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>
/// Where every act on seed is written: one short transaction under the ledger lock, in which the act loads what it needs, decides, and
/// appends. A refusal leaves nothing behind.
/// </summary>
public sealed class SeedLedger(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, TimeProvider clock)
{
    internal async Task<Outcome<T>> RecordAsync<T>(Actor actor, Func<SeedWork, Task<Outcome<T>>> act, CancellationToken stop)
        where T : notnull
    {
        var person = new PersonId(actor.UserId ?? throw new InvalidOperationException("An act on seed needs somebody signed in; check that first."));
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Database.CreateExecutionStrategy().ExecuteAsync(async () =>
        {
            db.ChangeTracker.Clear();
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            await provider.LockLedgerAsync(db, stop);
            var work = new SeedWork(db, await HeadAsync(db, stop), person, clock.GetUtcNow(), stop);
            var outcome = await act(work);
            if (!outcome.IsAllowed) return outcome;
            work.Close();
            await db.SaveChangesAsync(stop);
            await transaction.CommitAsync(stop);
            return outcome;
        });
    }

    private static async Task<LedgerHeadRow> HeadAsync(LibraryDbContext db, CancellationToken stop)
    {
        var head = await db.Set<LedgerHeadRow>().SingleOrDefaultAsync(stop);
        if (head is null) db.Add(head = new LedgerHeadRow { Hash = default(Lineage.Ledger.EntryHash).Hex });
        return head;
    }
}
