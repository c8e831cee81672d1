using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;

namespace LibraryDesk.Photos;

/// <summary>
/// Keeps photos as files: <c>ab/HASH-1600.jpg</c> under one folder. A file is written beside its place, forced to the medium, and then
/// renamed, so that a name never stands for half a photo and an acknowledged photo survives a kill or a power cut.
/// </summary>
public sealed class FilePhotoStore : IPhotoStore
{
    private readonly string _root;
    private long _unfinished;

    /// <summary>Opens the store in <paramref name="folder"/>, making it when missing.</summary>
    public FilePhotoStore(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        _root = Path.GetFullPath(folder);
        Directory.CreateDirectory(Unfinished);
    }

    private string Unfinished => Path.Combine(_root, "unfinished");

    public async Task SaveAsync(PhotoKey key, ReadOnlyMemory<byte> jpeg, CancellationToken stop)
    {
        if (PathOf(key) is not { } place) throw new ArgumentException("A key without a hash names nothing.", nameof(key));
        if (Touch(place)) return;
        var folder = Path.GetDirectoryName(place)!;
        Directory.CreateDirectory(folder);
        var beside = Path.Combine(Unfinished, string.Create(CultureInfo.InvariantCulture,
            $"{key}.{Environment.ProcessId}.{Interlocked.Increment(ref _unfinished)}"));
        try
        {
            await using (var file = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.Asynchronous))
            {
                await file.WriteAsync(jpeg, stop);
                file.Flush(flushToDisk: true);
            }
            File.Move(beside, place, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
        Folders.Force(folder);
        Folders.Force(_root);
    }

    public Task<Stream?> OpenAsync(PhotoKey key, CancellationToken stop)
    {
        if (PathOf(key) is not { } place || !File.Exists(place)) return Task.FromResult<Stream?>(null);
        try
        {
            return Task.FromResult<Stream?>(new FileStream(place, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, 65_536, FileOptions.Asynchronous));
        }
        catch (FileNotFoundException)
        {
            return Task.FromResult<Stream?>(null);
        }
    }

    public Task<bool> ExistsAsync(PhotoKey key, CancellationToken stop) => Task.FromResult(PathOf(key) is { } place && File.Exists(place));

    public Task<bool> DeleteAsync(PhotoKey key, CancellationToken stop)
    {
        if (PathOf(key) is not { } place || !File.Exists(place)) return Task.FromResult(false);
        File.Delete(place);
        return Task.FromResult(true);
    }

    public async IAsyncEnumerable<string> UntouchedSinceAsync(DateTimeOffset before, [EnumeratorCancellation] CancellationToken stop)
    {
        foreach (var folder in Directory.EnumerateDirectories(_root).Where(path => Path.GetFileName(path).Length == 2))
        {
            stop.ThrowIfCancellationRequested();
            // A folder holds one part in 256 of all photos; their sizes are asked for together.
            var photos = Directory.EnumerateFiles(folder, "*.jpg")
                .Select(path => (IsKey: PhotoKey.TryParse(Path.GetFileNameWithoutExtension(path), out var key), Key: key, Saved: File.GetLastWriteTimeUtc(path)))
                .Where(file => file.IsKey).GroupBy(file => file.Key.ContentHash!, file => file.Saved);
            foreach (var photo in photos.Where(sizes => sizes.Max() < before.UtcDateTime).ToArray()) yield return photo.Key;
        }
        await Task.CompletedTask;
    }

    public int SweepUnfinished(DateTimeOffset before)
    {
        var abandoned = Directory.EnumerateFiles(Unfinished).Where(f => File.GetLastWriteTimeUtc(f) < before.UtcDateTime).ToList();
        abandoned.ForEach(File.Delete);
        return abandoned.Count;
    }

    // A photo that is saved again is wanted again: its age starts anew, so that a sweep leaves it alone.
    private static bool Touch(string place)
    {
        try
        {
            if (!File.Exists(place)) return false;
            File.SetLastWriteTimeUtc(place, TimeProvider.System.GetUtcNow().UtcDateTime);
            return true;
        }
        catch (FileNotFoundException)
        {
            return false;
        }
    }

    private string? PathOf(PhotoKey key) => key.ContentHash is { } hash ? Path.Combine(_root, hash[..2], $"{key}.jpg") : null;

    /// <summary>A rename is on the medium only when its folder is; the base library cannot force a folder, so Linux and macOS are asked directly.</summary>
    private static class Folders
    {
        public static void Force(string folder)
        {
            if (OperatingSystem.IsWindows()) return;
            var handle = open(Encoding.UTF8.GetBytes(folder + "\0"), 0);
            if (handle < 0) throw new IOException($"The photo folder could not be opened for writing through (error {Marshal.GetLastPInvokeError()}).");
            try
            {
                if (fsync(handle) != 0) throw new IOException($"The photo folder could not be written through (error {Marshal.GetLastPInvokeError()}).");
            }
            finally
            {
                _ = close(handle);
            }
        }

        [DllImport("libc", SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        private static extern int open(byte[] path, int flags);

        [DllImport("libc", SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        private static extern int fsync(int handle);

        [DllImport("libc", SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        private static extern int close(int handle);
    }
}
