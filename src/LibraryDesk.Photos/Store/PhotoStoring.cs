namespace LibraryDesk.Photos;

/// <summary>Stores and removes a photo with all its sizes.</summary>
public static class PhotoStoring
{
    /// <summary>Keeps every size, the large one last: where it exists, the others do too.</summary>
    public static async Task SaveAsync(this IPhotoStore store, CleanedPhoto photo, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(photo);
        foreach (var rendition in photo.Renditions.Reverse())
        {
            await store.SaveAsync(photo.Key(rendition.Size), rendition.Jpeg, stop);
        }
    }

    /// <summary>Removes every size of the photo; false when none was there.</summary>
    public static async Task<bool> DeleteAsync(this IPhotoStore store, string contentHash, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(store);
        var any = false;
        foreach (var size in Enum.GetValues<PhotoSize>())
        {
            any |= await store.DeleteAsync(PhotoKey.For(contentHash, size), stop);
        }
        return any;
    }
}
