namespace LibraryDesk.Photos;

/// <summary>
/// Where cleaned photos are kept. Keys come from content, so saving the same photo twice keeps one copy, and deleting is for the caller
/// who knows that nobody else shows it.
/// </summary>
public interface IPhotoStore
{
    /// <summary>Keeps the bytes; when the task ends they are on the medium, whatever happens to the process afterwards.</summary>
    Task SaveAsync(PhotoKey key, ReadOnlyMemory<byte> jpeg, CancellationToken stop);

    /// <summary>A stream over the stored bytes, or null when there are none. The caller disposes it.</summary>
    Task<Stream?> OpenAsync(PhotoKey key, CancellationToken stop);

    /// <summary>True when the key holds something.</summary>
    Task<bool> ExistsAsync(PhotoKey key, CancellationToken stop);

    /// <summary>Removes what the key holds; false when there was nothing.</summary>
    Task<bool> DeleteAsync(PhotoKey key, CancellationToken stop);

    /// <summary>Content hashes that have not been saved, or saved again, since before the given time; in no order, one at a time.</summary>
    IAsyncEnumerable<string> UntouchedSinceAsync(DateTimeOffset before, CancellationToken stop);

    /// <summary>Removes what saving left half-done before the given time; returns how many files.</summary>
    int SweepUnfinished(DateTimeOffset before);
}
