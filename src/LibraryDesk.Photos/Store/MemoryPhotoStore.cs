using System.Collections.Concurrent;

namespace LibraryDesk.Photos;

/// <summary>Keeps photos in memory, for tests and for trying things out. Gone when the process ends.</summary>
public sealed class MemoryPhotoStore(TimeProvider? clock = null) : IPhotoStore
{
    private readonly ConcurrentDictionary<PhotoKey, byte[]> _photos = new();
    private readonly ConcurrentDictionary<string, DateTimeOffset> _saved = new();

    /// <summary>How many sizes of photos are held.</summary>
    public int Count => _photos.Count;

    public Task SaveAsync(PhotoKey key, ReadOnlyMemory<byte> jpeg, CancellationToken stop)
    {
        if (key.ContentHash is null) throw new ArgumentException("A key without a hash names nothing.", nameof(key));
        _photos[key] = jpeg.ToArray();
        _saved[key.ContentHash] = (clock ?? TimeProvider.System).GetUtcNow();
        return Task.CompletedTask;
    }

    public Task<Stream?> OpenAsync(PhotoKey key, CancellationToken stop) =>
        Task.FromResult<Stream?>(_photos.TryGetValue(key, out var jpeg) ? new MemoryStream(jpeg, writable: false) : null);

    public Task<bool> ExistsAsync(PhotoKey key, CancellationToken stop) => Task.FromResult(_photos.ContainsKey(key));

    public Task<bool> DeleteAsync(PhotoKey key, CancellationToken stop) => Task.FromResult(_photos.TryRemove(key, out _));

    public IAsyncEnumerable<string> UntouchedSinceAsync(DateTimeOffset before, CancellationToken stop) =>
        _photos.Keys.Select(key => key.ContentHash!).Distinct().Where(hash => _saved[hash] < before).ToArray().ToAsyncEnumerable();

    public int SweepUnfinished(DateTimeOffset before) => 0;
}
