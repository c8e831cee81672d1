using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Puts a draft on the desk: from now on volunteers see it.</summary>
public sealed class FileCase(IDbContextFactory<LibraryDbContext> factory, CaseFeed feed, TimeProvider clock)
{
    public async Task<Outcome<CaseRow>> FileAsync(Actor actor, long caseId, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        // Posted twice over a bad line: the first one did it.
        if (row.State != CaseState.Draft) return row;
        var hasPhoto = await db.Set<PhotoRow>().AnyAsync(p => p.CaseId == caseId && p.RemovedAt == null, stop);
        var hasAnswer = await db.Set<AnswerRow>()
            .AnyAsync(a => a.CaseId == caseId && a.TakenBackAt == null && (a.Kind == AnswerKind.States || a.Kind == AnswerKind.Measure), stop);

        if (!hasPhoto && !hasAnswer)
            return new Refusal("case.nothing-to-see", "Add one photo or answer one question first. With neither there is nothing the desk could look at.");

        var now = clock.GetUtcNow();
        row.State = CaseState.Open;
        row.StateSince = now;
        row.FiledAt = now;
        db.AddCaseEvent(caseId, CaseEvents.Filed, actor, now);
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
