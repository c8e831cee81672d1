using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// Lets the people who work on one case take turns: the case's row is locked first, so two who seal or finish at the same moment
/// queue instead of colliding, and the second decides with the first in sight.
/// </summary>
public sealed class CaseTurn(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, CaseFeed feed, GuestKeySeal seal)
{
    /// <summary>Runs <paramref name="act"/> with the case in hand, then saves; a refusal leaves everything as it was.</summary>
    internal async Task<Outcome<T>> TakeAsync<T>(long caseId, Func<CaseInHand, Task<Outcome<T>>> act, CancellationToken stop)
        where T : notnull
    {
        await using var before = await factory.CreateDbContextAsync(stop);
        // The guide is fetched before the lock: the shelf may have to store it, on a connection of its own.
        var by = await before.Set<CaseRow>().Where(c => c.Id == caseId).Select(c => new { c.GuideId, c.GuideVersion }).SingleOrDefaultAsync(stop);
        if (by is null) return CaseRefusals.NotFound;
        if (!(await shelf.FindAsWrittenAsync(by.GuideId, by.GuideVersion, stop)).TryGet(out _, out var gone)) return gone;
        var outcome = await before.Database.CreateExecutionStrategy().ExecuteAsync(() => RunAsync(caseId, act, stop));
        if (outcome.IsAllowed) feed.Publish(caseId);
        return outcome;
    }

    private async Task<Outcome<T>> RunAsync<T>(long caseId, Func<CaseInHand, Task<Outcome<T>>> act, CancellationToken stop)
        where T : notnull
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        // Changes nothing, but locks the row until the end; the revision stays, so the owner's open form stays good.
        await db.Set<CaseRow>().Where(c => c.Id == caseId).ExecuteUpdateAsync(c => c.SetProperty(x => x.Round, x => x.Round), stop);
        var row = await db.Set<CaseRow>().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null) return CaseRefusals.NotFound;

        var outcome = await act(new CaseInHand(db, row, await shelf.GetAsWrittenAsync(row.GuideId, row.GuideVersion, stop), seal));
        if (!outcome.IsAllowed) return outcome;
        await db.SaveChangesAsync(stop);
        await transaction.CommitAsync(stop);
        return outcome;
    }
}

/// <summary>A case whose turn is taken: its row is tracked and locked until the transaction ends.</summary>
/// <param name="Guide">The guide as written: what an act keeps or sends is not in the language of whoever did it.</param>
internal sealed record CaseInHand(LibraryDbContext Db, CaseRow Case, CompiledGuide Guide, GuestKeySeal Seal)
{
    /// <summary>Writes a line of the case's history with the change it tells of.</summary>
    public void Tell(string kind, Guid? by, string? detail, DateTimeOffset at) => Db.Add(new CaseEventRow
    {
        CaseId = Case.Id,
        Kind = kind,
        ById = by,
        Detail = detail is { Length: > 1000 } ? detail[..999] + "…" : detail,
        At = at,
    });

    public void MoveTo(CaseState state, DateTimeOffset at)
    {
        if (Case.State == state) return;
        Case.State = state;
        Case.StateSince = at;
    }

    /// <summary>Requests for a look that are neither met nor withdrawn.</summary>
    public Task<List<LookRequestRow>> OpenRequestsAsync(CancellationToken stop) =>
        Db.Set<LookRequestRow>().Where(r => r.CaseId == Case.Id && r.MetAt == null && r.WithdrawnAt == null).OrderBy(r => r.Id).ToListAsync(stop);

    public Task<List<OpinionRow>> OpinionsAsync(CancellationToken stop) =>
        Db.Set<OpinionRow>().Where(o => o.CaseId == Case.Id && o.Round == Case.Round).OrderBy(o => o.SealedAt).ThenBy(o => o.Id).ToListAsync(stop);
}
