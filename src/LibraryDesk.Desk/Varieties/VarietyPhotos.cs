using LibraryDesk.Data.Seeds;
using LibraryDesk.Photos;

namespace LibraryDesk.Desk.Varieties;

/// <summary>Reference photos of a variety: cleaned like any other, so that nothing in them tells where somebody lives. Librarians add and take off; anybody may see.</summary>
public sealed class VarietyPhotos(IDbContextFactory<LibraryDbContext> factory, PhotoCleaner cleaner, IPhotoStore store, TimeProvider clock)
{
    public const string CaptionCode = "photo.caption";
    public const string TooManyCode = "photo.too-many";
    public const int Most = 12;

    private const int LongestCaption = 300;

    /// <param name="actor">A librarian.</param>
    /// <param name="varietyId">The record.</param>
    /// <param name="caption">What it shows, for people who cannot see it.</param>
    /// <param name="upload">The bytes as sent.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<VarietyPhotoRow>> AddAsync(Actor actor, long varietyId, string? caption, Stream upload, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (string.IsNullOrWhiteSpace(caption) || caption.Length > LongestCaption) return new Refusal(CaptionCode, $"Say in a few words what the photo shows, in at most {LongestCaption} letters.");
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!await db.Set<VarietyRow>().AnyAsync(row => row.Id == varietyId, stop)) return ReadVarieties.NotFound;
        if (await db.Set<VarietyPhotoRow>().CountAsync(row => row.VarietyId == varietyId && row.RemovedAt == null, stop) >= Most) return new Refusal(TooManyCode, $"A variety has at most {Most} photos. Take one off that shows little, then add this one.");

        var cleaned = await cleaner.CleanAsync(upload, stop);
        if (!cleaned.Taken) return new Refusal(cleaned.Refusal.Code, cleaned.Refusal.Message);
        await store.SaveAsync(cleaned.Photo, stop);

        var large = cleaned.Photo[PhotoSize.Large];
        var kept = new VarietyPhotoRow
        {
            Id = Guid.NewGuid(),
            VarietyId = varietyId,
            StoreKey = cleaned.Photo.ContentHash,
            Width = large.Width,
            Height = large.Height,
            Bytes = cleaned.Photo.Renditions.Sum(rendition => (long)rendition.Jpeg.Length),
            Caption = caption.Trim(),
            At = clock.GetUtcNow(),
        };
        db.Add(kept);
        await db.SaveChangesAsync(stop);
        return kept;
    }

    /// <summary>Takes a photo off, or puts it back.</summary>
    public async Task<Outcome<VarietyPhotoRow>> SetRemovedAsync(Actor actor, long varietyId, Guid photoId, bool isRemoved, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<VarietyPhotoRow>().SingleOrDefaultAsync(photo => photo.Id == photoId && photo.VarietyId == varietyId, stop);
        if (row is null) return Gone;
        row.RemovedAt = isRemoved ? clock.GetUtcNow() : null;
        await db.SaveChangesAsync(stop);
        return row;
    }

    /// <summary>The bytes of a photo.</summary>
    public async Task<Outcome<Stream>> OpenAsync(Guid photoId, PhotoSize size, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var key = await db.Set<VarietyPhotoRow>().Where(photo => photo.Id == photoId && photo.RemovedAt == null).Select(photo => photo.StoreKey).SingleOrDefaultAsync(stop);
        if (key is null) return Gone;
        return await store.OpenAsync(PhotoKey.For(key, size), stop) is { } bytes ? bytes : Gone;
    }

    private static Refusal Gone { get; } = new("photo.gone", "This photo is not here. It may have been taken off.");
}
