using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>The end of the chain.</summary>
/// <param name="Head">Its height and hash.</param>
/// <param name="At">When the last entry was written; null for an empty ledger.</param>
public sealed record LedgerEnd(ChainHead Head, DateTimeOffset? At);

/// <summary>Reads the end of the chain, to be printed or mailed and checked later.</summary>
public sealed class LedgerCheckpoint(IDbContextFactory<LibraryDbContext> factory)
{
    /// <summary>The end with the day of its entry, for a page.</summary>
    public async Task<Outcome<LedgerEnd>> ReadAsync(Actor actor, CancellationToken stop)
    {
        if (!(await RunAsync(actor, stop)).TryGet(out var head, out var no)) return no;
        await using var db = await factory.CreateDbContextAsync(stop);
        return new LedgerEnd(head, await db.Set<LedgerEntryRow>().Where(entry => entry.Sequence == head.Height).Select(entry => (DateTimeOffset?)entry.At).SingleOrDefaultAsync(stop));
    }

    public async Task<Outcome<ChainHead>> RunAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var head = await db.Set<LedgerHeadRow>().AsNoTracking().SingleOrDefaultAsync(stop);
        return head?.ToHead() ?? ChainHead.Empty;
    }
}
