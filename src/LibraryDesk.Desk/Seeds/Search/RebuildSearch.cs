using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>What stands in the search tables after a rebuild.</summary>
public sealed record SearchRebuilt(int Lots, int Names, int Words);

/// <summary>Fills the search tables anew from what stands in the other tables, batch by batch, while the ledger waits.</summary>
public sealed class RebuildSearch(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider)
{
    private const int Batch = 1000;

    public async Task<Outcome<SearchRebuilt>> RunAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Database.CreateExecutionStrategy().ExecuteAsync<Outcome<SearchRebuilt>>(async () =>
        {
            db.ChangeTracker.Clear();
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            await provider.LockLedgerAsync(db, stop);
            await db.Set<SearchLotRow>().ExecuteDeleteAsync(stop);
            await db.Set<SearchPostingRow>().ExecuteDeleteAsync(stop);
            await db.Set<SearchTrigramRow>().ExecuteDeleteAsync(stop);
            await db.Set<SearchNameRow>().ExecuteDeleteAsync(stop);
            var index = new SearchIndex(db, stop);
            var lots = await EachAsync(db, db.Set<LotRow>().Where(row => !row.IsVoid).Select(row => row.Id), index.PutNextLotsAsync, stop);
            await EachAsync(db, db.Set<AccessionRow>().Where(row => !row.IsVoid).Select(row => row.Id), index.PutDonorsAsync, stop);
            await EachAsync(db, db.Set<VarietyRow>().Select(row => row.Id), index.PutVarietiesAsync, stop);
            var names = await db.Set<SearchNameRow>().CountAsync(stop);
            var words = await db.Set<SearchTrigramRow>().Select(row => row.Word).Distinct().CountAsync(stop);
            await transaction.CommitAsync(stop);
            return new SearchRebuilt(lots, names, words);
        });
    }

    private static async Task<int> EachAsync(LibraryDbContext db, IQueryable<long> all, Func<IReadOnlyCollection<long>, Task> put, CancellationToken stop)
    {
        var (count, after) = (0, 0L);
        while (true)
        {
            var last = after;
            var ids = await all.Where(id => id > last).OrderBy(id => id).Take(Batch).ToListAsync(stop);
            if (ids.Count == 0) return count;
            await put(ids);
            await db.SaveChangesAsync(stop);
            // Names are few and are asked for again and again; the rest would only fill the memory.
            foreach (var entry in db.ChangeTracker.Entries().Where(entry => entry.Entity is not SearchNameRow).ToArray()) entry.State = EntityState.Detached;
            count += ids.Count;
            after = ids[^1];
        }
    }
}
