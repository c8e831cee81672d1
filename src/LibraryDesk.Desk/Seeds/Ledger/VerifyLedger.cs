using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Walks the whole ledger, one entry in memory at a time, and names the first entry that does not fit.</summary>
public sealed class VerifyLedger(IDbContextFactory<LibraryDbContext> factory)
{
    /// <param name="actor">A librarian, or the command line.</param>
    /// <param name="checkpoint">A head that was printed or mailed earlier, as it was printed; null for none.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<ChainReport>> RunAsync(Actor actor, string? checkpoint, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        var heads = new List<ChainHead>();
        if (!string.IsNullOrWhiteSpace(checkpoint))
        {
            if (!ChainHead.Read(checkpoint).TryGet(out var kept, out var no)) return no;
            heads.Add(kept);
        }

        await using var db = await factory.CreateDbContextAsync(stop);
        // Read first: entries that other clerks append while the walk goes on only make the chain longer.
        var end = await db.Set<LedgerHeadRow>().AsNoTracking().SingleOrDefaultAsync(stop);
        if (end is not null && !heads.Exists(head => head.Height == end.Height)) heads.Add(end.ToHead());
        return await WalkAsync(db, heads, stop);
    }

    private static async Task<ChainReport> WalkAsync(LibraryDbContext db, IEnumerable<ChainHead> heads, CancellationToken stop)
    {
        var walk = new ChainWalk(ChainHead.Empty, heads);
        await foreach (var row in db.Set<LedgerEntryRow>().AsNoTracking().OrderBy(entry => entry.Sequence).AsAsyncEnumerable().WithCancellation(stop))
        {
            if (row.ToEntry() is not { } entry)
            {
                return new(walk.Head, new(row.Sequence, ChainFaultKind.Form, string.Create(CultureInfo.InvariantCulture, $"Entry {row.Sequence} has been changed: a part of it cannot be read.")));
            }
            if (walk.Step(entry) is { } fault) return new(walk.Head, fault);
        }
        return walk.Finish();
    }
}
