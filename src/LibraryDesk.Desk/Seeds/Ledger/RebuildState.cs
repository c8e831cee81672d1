using System.Text.Json;
using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger.Rebuild;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>What a rebuild found.</summary>
/// <param name="Entries">Entries replayed.</param>
/// <param name="Rows">Rows the ledger asks for.</param>
/// <param name="Differences">Rows that were missing, left over or different, as "table key: what"; the first hundred of them.</param>
/// <param name="DifferenceCount">How many there were.</param>
/// <param name="Repaired">True when the tables were set right.</param>
public sealed record RebuildReport(long Entries, long Rows, IReadOnlyList<string> Differences, long DifferenceCount, bool Repaired);

/// <summary>Works the derived tables out of the ledger again and compares them with what stands there. Its memory does not grow with the library: what it works out lies in a scratch file.</summary>
public sealed class RebuildState(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider)
{
    private const int MostNamed = 100;

    /// <param name="actor">A librarian, or the command line.</param>
    /// <param name="checkOnly">True to compare and change nothing.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<RebuildReport>> RunAsync(Actor actor, bool checkOnly, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Database.CreateExecutionStrategy().ExecuteAsync<Outcome<RebuildReport>>(async () =>
        {
            db.ChangeTracker.Clear();
            using var scratch = new RebuildScratch();
            // The ledger stands still meanwhile, so that entries and tables are of one moment.
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            await provider.LockLedgerAsync(db, stop);
            db.ChangeTracker.Clear();
            if (!(await ReplayAsync(db, scratch, stop)).TryGet(out var replayed, out var no)) return no;

            var tables = new TableComparison(db, scratch, MostNamed, stop);
            foreach (var table in DerivedTable.All) await tables.CompareAsync(table);
            var repairs = !checkOnly && tables.DifferenceCount > 0;
            if (repairs)
            {
                await tables.RepairAsync();
                await transaction.CommitAsync(stop);
            }
            return new RebuildReport(replayed.Entries, scratch.Count, tables.Differences, tables.DifferenceCount, repairs);
        });
    }

    private static async Task<Outcome<Replayed>> ReplayAsync(LibraryDbContext db, RebuildScratch scratch, CancellationToken stop)
    {
        var wanted = new WantedRows(scratch);
        var entries = 0L;
        await foreach (var row in db.Set<LedgerEntryRow>().AsNoTracking().OrderBy(entry => entry.Sequence).AsAsyncEnumerable().WithCancellation(stop))
        {
            if (row.ToEntry() is not { } entry) return new Refusal("rebuild.damaged", $"Entry {row.Sequence} cannot be read. Run desk verify.");
            try
            {
                wanted.Take(entry);
            }
            catch (Exception broken) when (broken is LedgerMisfitException or JsonException)
            {
                return new Refusal("rebuild.misfit", $"{broken.Message} Run desk verify.");
            }
            entries++;
        }
        wanted.Finish();
        return new Replayed(entries);
    }

    private sealed record Replayed(long Entries);
}
