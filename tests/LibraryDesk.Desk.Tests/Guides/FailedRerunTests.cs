using LibraryDesk.Data;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.People;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using static LibraryDesk.Desk.Tests.Guides.GuideScene;

namespace LibraryDesk.Desk.Tests.Guides;

public sealed class FailedRerunTests
{
    private static readonly Actor Hester = Actor.Librarian(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task A_re_run_that_fails_is_logged_says_so_at_once_and_can_be_started_again(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await BeginAsync(library, Hester);
        var log = new KeptLog();
        // The start takes the first connection; the work's own, the second, breaks.
        await using var reruns = new RerunCases(new BrokenOnce(library.Act<IDbContextFactory<LibraryDbContext>>(), at: 2), library.Act<GuideShelf>(), library.Clock, log);
        var started = Value(await reruns.StartAsync(Hester, Peppers, default));
        await reruns.WaitAsync(started.Id, TimeSpan.FromMinutes(1), default);

        var failed = Value(await reruns.ReadAsync(Hester, Peppers, default));
        Assert.True(failed is { HasFailed: true, IsStopped: false, Result: null });
        Assert.True(Value(await reruns.ProgressAsync(Hester, started.Id, default)).HasFailed);
        Assert.Equal(LogLevel.Error, Assert.Single(log.Levels));

        var again = Value(await reruns.StartAsync(Hester, Peppers, default));
        await reruns.WaitAsync(again.Id, TimeSpan.FromMinutes(1), default);
        Assert.NotEqual(started.Id, again.Id);
        Assert.True(Value(await reruns.ReadAsync(Hester, Peppers, default)) is { HasFailed: false, Result: not null });
    }

    /// <summary>Connections to the library, of which one cannot be had.</summary>
    private sealed class BrokenOnce(IDbContextFactory<LibraryDbContext> real, int at) : IDbContextFactory<LibraryDbContext>
    {
        private int _asked;

        public LibraryDbContext CreateDbContext() => Interlocked.Increment(ref _asked) == at ? throw new IOException("the disk is gone") : real.CreateDbContext();
    }

    private sealed class KeptLog : ILogger<RerunCases>
    {
        private readonly List<LogLevel> _levels = [];

        public IReadOnlyList<LogLevel> Levels => _levels;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            lock (_levels) _levels.Add(logLevel);
        }
    }
}
