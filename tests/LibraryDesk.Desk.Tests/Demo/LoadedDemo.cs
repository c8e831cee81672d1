using System.Collections.Concurrent;
using LibraryDesk.Desk.Demo;
using LibraryDesk.Photos;
using LibraryDesk.TestServers;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.Demo;

/// <summary>The demo, loaded once on each database for all tests of one class: loading takes a while.</summary>
public sealed class LoadedDemo : IAsyncDisposable
{
    public static readonly DateTimeOffset Today = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly ConcurrentDictionary<string, Lazy<Task<TestLibrary>>> _libraries = new(StringComparer.Ordinal);

    public MemoryPhotoStore Photos { get; } = new();

    public Task<TestLibrary> OnAsync(string database) =>
        _libraries.GetOrAdd(database, name => new Lazy<Task<TestLibrary>>(() => LoadAsync(name))).Value;

    public async ValueTask DisposeAsync()
    {
        foreach (var library in _libraries.Values) await (await library.Value).DisposeAsync();
    }

    private async Task<TestLibrary> LoadAsync(string database)
    {
        var library = await TestLibrary.CreateAsync(database, services => services.AddSingleton<IPhotoStore>(Photos));
        library.Clock.SetUtcNow(Today);
        var loaded = await DemoLoader.LoadAsync(library.Services, CancellationToken.None);
        Assert.Null(loaded.Refusal);
        return library;
    }
}
