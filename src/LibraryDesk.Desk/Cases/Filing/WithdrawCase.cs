using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Ends a case because its owner no longer wants it looked at.</summary>
public sealed class WithdrawCase(IDbContextFactory<LibraryDbContext> factory, CaseFeed feed, TimeProvider clock)
{
    public async Task<Outcome<CaseRow>> WithdrawAsync(Actor actor, long caseId, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;

        var now = clock.GetUtcNow();
        row.State = CaseState.Closed;
        row.StateSince = now;
        row.ClosingNote = ClosingNotes.Withdrawn;
        await CaseOwner.AskedIsOverAsync(db, row, now, stop);
        db.AddCaseEvent(caseId, CaseEvents.Withdrawn, actor, now);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return CaseRefusals.ChangedMeanwhile;
        }
        feed.Publish(caseId);
        return row;
    }
}
