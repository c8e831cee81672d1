using System.Runtime.CompilerServices;
using System.Threading.Channels;
using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Reading;

/// <summary>Waits for changes of a case, on behalf of somebody who may see it.</summary>
public sealed class FollowCase(IDbContextFactory<LibraryDbContext> factory, CaseFeed feed, TimeProvider clock)
{
    /// <summary>Another server's changes are not told to this one, so the case is also looked at this often.</summary>
    private static readonly TimeSpan LookAnyway = TimeSpan.FromSeconds(20);

    /// <summary>The number of the newest line of the case's history, each time it has grown.</summary>
    /// <param name="since">The newest line the asker knows.</param>
    public async Task<Outcome<CaseChanges>> FollowAsync(Actor actor, long caseId, long since, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null || !CaseAccess.MaySee(actor, row)) return CaseRefusals.NotFound;
        return new CaseChanges(ChangesAsync(caseId, since, stop));
    }

    private async IAsyncEnumerable<string> ChangesAsync(long caseId, long since, [EnumeratorCancellation] CancellationToken stop)
    {
        var woken = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        using var following = feed.Follow(caseId, () => woken.Writer.TryWrite(true));
        while (!stop.IsCancellationRequested)
        {
            var newest = await NewestAsync(caseId, stop);
            if (newest > since)
            {
                since = newest;
                yield return newest.ToString(System.Globalization.CultureInfo.InvariantCulture);
            }
            using var timed = CancellationTokenSource.CreateLinkedTokenSource(stop);
            await Task.WhenAny(woken.Reader.WaitToReadAsync(timed.Token).AsTask(), Task.Delay(LookAnyway, clock, timed.Token));
            await timed.CancelAsync();
            woken.Reader.TryRead(out _);
        }
    }

    private async Task<long> NewestAsync(long caseId, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Set<CaseEventRow>().Where(e => e.CaseId == caseId).MaxAsync(e => (long?)e.Id, stop) ?? 0;
    }
}

/// <summary>Changes of one case as they come.</summary>
public sealed record CaseChanges(IAsyncEnumerable<string> Newest);
