namespace LibraryDesk.Photos.Tests;

/// <summary>Both stores keep the same promises.</summary>
public abstract class PhotoStoreTests
{
    private static readonly string Hash = new('a', 64);
    private static readonly PhotoKey Key = PhotoKey.For(Hash, PhotoSize.Large);

    protected abstract IPhotoStore Store { get; }

    [Fact]
    public async Task What_was_saved_is_read_back()
    {
        await Store.SaveAsync(Key, new byte[] { 1, 2, 3 }, CancellationToken.None);
        await using var read = (await Store.OpenAsync(Key, CancellationToken.None))!;
        using var copy = new MemoryStream();
        await read.CopyToAsync(copy);
        Assert.Equal([1, 2, 3], copy.ToArray());
    }

    [Fact]
    public async Task What_was_never_saved_is_not_there()
    {
        Assert.Null(await Store.OpenAsync(Key, CancellationToken.None));
        Assert.False(await Store.ExistsAsync(Key, CancellationToken.None));
        Assert.False(await Store.DeleteAsync(Key, CancellationToken.None));
        Assert.False(await Store.ExistsAsync(default, CancellationToken.None));
    }

    [Fact]
    public async Task A_deleted_photo_is_gone_in_all_sizes()
    {
        foreach (var size in Enum.GetValues<PhotoSize>()) await Store.SaveAsync(PhotoKey.For(Hash, size), new byte[] { 9 }, CancellationToken.None);
        Assert.True(await Store.DeleteAsync(Hash, CancellationToken.None));
        foreach (var size in Enum.GetValues<PhotoSize>()) Assert.False(await Store.ExistsAsync(PhotoKey.For(Hash, size), CancellationToken.None));
    }

    [Fact]
    public async Task Saving_twice_and_at_once_keeps_one_whole_copy()
    {
        var jpeg = Enumerable.Range(0, 200_000).Select(i => (byte)i).ToArray();
        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => Store.SaveAsync(Key, jpeg, CancellationToken.None))));
        await using var read = (await Store.OpenAsync(Key, CancellationToken.None))!;
        using var copy = new MemoryStream();
        await read.CopyToAsync(copy);
        Assert.Equal(jpeg, copy.ToArray());
    }

    [Theory]
    [InlineData("")]
    [InlineData("../../etc/passwd-1600")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa-1601")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA-1600")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    public void Nothing_but_a_hash_and_a_size_is_a_key(string text) => Assert.False(PhotoKey.TryParse(text, out _));

    [Fact]
    public void A_key_reads_back_as_it_was_written()
    {
        Assert.True(PhotoKey.TryParse(Key.ToString(), out var read));
        Assert.Equal(Key, read);
    }
}

public sealed class MemoryPhotoStoreTests : PhotoStoreTests
{
    protected override IPhotoStore Store { get; } = new MemoryPhotoStore();
}

public sealed class FilePhotoStoreTests : PhotoStoreTests, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("desk-photos-").FullName;
    private readonly FilePhotoStore _store;

    public FilePhotoStoreTests() => _store = new FilePhotoStore(_folder);

    protected override IPhotoStore Store => _store;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Another_store_on_the_same_folder_sees_the_photo()
    {
        var key = PhotoKey.For(new string('b', 64), PhotoSize.Small);
        await _store.SaveAsync(key, new byte[] { 7 }, CancellationToken.None);
        Assert.True(await new FilePhotoStore(_folder).ExistsAsync(key, CancellationToken.None));
    }

    [Fact]
    public async Task Nothing_unfinished_is_left_after_saving()
    {
        await _store.SaveAsync(PhotoKey.For(new string('c', 64), PhotoSize.Small), new byte[] { 7 }, CancellationToken.None);
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(_folder, "unfinished")));
    }

    [Fact]
    public async Task A_photo_saved_again_is_young_again()
    {
        var key = PhotoKey.For(new string('d', 64), PhotoSize.Small);
        await _store.SaveAsync(key, new byte[] { 7 }, CancellationToken.None);
        var file = Directory.EnumerateFiles(_folder, "*.jpg", SearchOption.AllDirectories).Single();
        File.SetLastWriteTimeUtc(file, new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        var before = new DateTimeOffset(2021, 1, 1, 0, 0, 0, TimeSpan.Zero);
        Assert.Equal([key.ContentHash!], await _store.UntouchedSinceAsync(before, CancellationToken.None).ToArrayAsync());
        await _store.SaveAsync(key, new byte[] { 7 }, CancellationToken.None);
        Assert.Empty(await _store.UntouchedSinceAsync(before, CancellationToken.None).ToArrayAsync());
    }

    [Fact]
    public void Only_what_was_abandoned_before_the_given_time_is_swept()
    {
        var left = Path.Combine(_folder, "unfinished", "half");
        File.WriteAllBytes(left, [1]);
        File.SetLastWriteTimeUtc(left, new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        Assert.Equal(0, _store.SweepUnfinished(new DateTimeOffset(2025, 12, 31, 0, 0, 0, TimeSpan.Zero)));
        Assert.Equal(1, _store.SweepUnfinished(new DateTimeOffset(2026, 1, 2, 0, 0, 0, TimeSpan.Zero)));
        Assert.False(File.Exists(left));
    }
}
