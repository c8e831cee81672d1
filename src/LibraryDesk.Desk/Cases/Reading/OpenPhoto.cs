using LibraryDesk.Data.Cases;
using LibraryDesk.Photos;

namespace LibraryDesk.Desk.Cases.Reading;

/// <summary>Opens a stored photo of a case for somebody who may see the case.</summary>
public sealed class OpenPhoto(IDbContextFactory<LibraryDbContext> factory, IPhotoStore store)
{
    public static Refusal Gone { get; } = new("photo.gone", "This photo is not here. It may have been taken off the case.");

    public async Task<Outcome<Stream>> OpenAsync(Actor actor, Guid photoId, PhotoSize size, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var photo = await db.Set<PhotoRow>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == photoId && p.RemovedAt == null, stop);
        if (photo is null) return Gone;
        var row = await db.Set<CaseRow>().AsNoTracking().SingleAsync(c => c.Id == photo.CaseId, stop);
        if (!CaseAccess.MaySee(actor, row)) return Gone;
        return await store.OpenAsync(PhotoKey.For(photo.StoreKey, size), stop) is { } bytes ? bytes : Gone;
    }
}
