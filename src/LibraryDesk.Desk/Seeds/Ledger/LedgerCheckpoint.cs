using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Reads the end of the chain, to be printed or mailed and checked later.</summary>
public sealed class LedgerCheckpoint(IDbContextFactory<LibraryDbContext> factory)
{
    public async Task<Outcome<ChainHead>> RunAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var head = await db.Set<LedgerHeadRow>().AsNoTracking().SingleOrDefaultAsync(stop);
        return head?.ToHead() ?? ChainHead.Empty;
    }
}
