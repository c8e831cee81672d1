using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Takes a photo off a case, or puts it back. The bytes stay until the sweep, so that a slip can be undone.</summary>
public sealed class RemovePhoto(IDbContextFactory<LibraryDbContext> factory, CaseFeed feed, TimeProvider clock)
{
    public Task<Outcome<PhotoRow>> RemoveAsync(Actor actor, long caseId, Guid photoId, CancellationToken stop) =>
        ChangeAsync(actor, caseId, photoId, removed: true, stop);

    public Task<Outcome<PhotoRow>> RestoreAsync(Actor actor, long caseId, Guid photoId, CancellationToken stop) =>
        ChangeAsync(actor, caseId, photoId, removed: false, stop);

    private async Task<Outcome<PhotoRow>> ChangeAsync(Actor actor, long caseId, Guid photoId, bool removed, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out _, out var no)) return no;
        var photo = await db.Set<PhotoRow>().SingleOrDefaultAsync(p => p.Id == photoId && p.CaseId == caseId, stop);

        if (photo is null) return new Refusal("photo.gone", "This photo is no longer here. If you want it in the case, send it again.");
        if (photo.RemovedAt is not null == removed) return photo;

        var now = clock.GetUtcNow();
        photo.RemovedAt = removed ? now : null;
        db.AddCaseEvent(caseId, removed ? CaseEvents.PhotoRemoved : CaseEvents.PhotoRestored, actor, now, photo.Part);
        await db.SaveChangesAsync(stop);
        feed.Publish(caseId);
        return photo;
    }
}
