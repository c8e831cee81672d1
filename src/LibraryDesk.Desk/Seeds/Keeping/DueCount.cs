using LibraryDesk.Data.Seeds;
using LibraryDesk.Data.Settings;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds.Keeping;

/// <summary>How many things are due in keeping, as it was last reckoned.</summary>
/// <param name="Total">Due today or overdue.</param>
/// <param name="At">When it was reckoned.</param>
public sealed record DueFigure(int Total, DateTimeOffset At);

/// <summary>
/// The number of things due in keeping, for pages that are opened often. What is due cannot be counted by the database alone, since forecasts
/// are reckoned lot by lot; so the figure is kept until the day, the settings or an entry of the ledger that bears on keeping changes it, and
/// reckoning it anew never takes more than a fiftieth of the server's time.
/// </summary>
public sealed class DueCount(IDbContextFactory<LibraryDbContext> factory, DueList list, LibraryClock days, TimeProvider clock)
{
    private const int Rest = 50;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    // Entries that leave every lot's seed, tests and place as they were: the daily business of the counter.
    private static readonly string[] Beside = [.. new[] { EntryKind.Requested, EntryKind.Picked, EntryKind.Lent, EntryKind.LoanEnded, EntryKind.Held, EntryKind.Released, EntryKind.Recalled }.Select(SeedActJson.NameOf)];

    private readonly Lock _turn = new();
    private Kept? _kept;
    private Task? _reckoning;

    /// <summary>The figure; null while a large library is read for the first time.</summary>
    public async Task<DueFigure?> ReadAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsVolunteer) return null;
        if (await IsOldAsync(stop))
        {
            var reckoning = Reckoning();
            if (await Task.WhenAny(reckoning, Task.Delay(Patience, clock, stop)) == reckoning) await reckoning;
        }
        return _kept?.Figure;
    }

    // Reads the entries that came since the figure was reckoned, not the ledger.
    private async Task<bool> IsOldAsync(CancellationToken stop)
    {
        if (_kept is not { } kept) return true;
        var now = clock.GetUtcNow();
        if (now - kept.Figure.At < kept.Took * Rest) return false;
        if (days.DayOf(now) != days.DayOf(kept.Figure.At)) return true;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (await db.Set<LibrarySettingsRow>().Select(settings => settings.Revision).SingleOrDefaultAsync(stop) != kept.Settings) return true;
        return await db.Set<LedgerEntryRow>().AnyAsync(entry => entry.Sequence > kept.Height && !Beside.Contains(entry.Kind), stop);
    }

    // One at a time; it goes on when the page that asked for it is gone.
    private Task Reckoning()
    {
        lock (_turn) return _reckoning is { IsCompleted: false } running ? running : _reckoning = Task.Run(ReckonAsync);
    }

    private async Task ReckonAsync()
    {
        await using var db = await factory.CreateDbContextAsync(CancellationToken.None);
        var settings = await db.Set<LibrarySettingsRow>().Select(row => row.Revision).SingleOrDefaultAsync(CancellationToken.None);
        // Before the lots are read: what comes in meanwhile is found to be newer.
        var height = await db.Set<LedgerHeadRow>().Select(head => head.Height).SingleOrDefaultAsync(CancellationToken.None);
        var begun = clock.GetTimestamp();
        if (!(await list.ReadAsync(Actor.System, null, 0, CancellationToken.None)).TryGet(out var due, out _)) return;
        _kept = new(new(due.Total, clock.GetUtcNow()), height, settings, clock.GetElapsedTime(begun));
    }

    private sealed record Kept(DueFigure Figure, long Height, long Settings, TimeSpan Took);
}
