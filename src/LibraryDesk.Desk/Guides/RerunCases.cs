using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;
using LibraryDesk.Data.Guides;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Desk.Guides;

/// <summary>
/// Re-runs all determined cases by the version in use and by the draft, each case by a guide that never saw it. It goes on in the background and writes how far it
/// is, so that the page can be closed meanwhile.
/// </summary>
public sealed partial class RerunCases(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, TimeProvider clock, ILogger<RerunCases> log) : IAsyncDisposable
{
    /// <summary>Without a sign of life for this long a re-run counts as cut off.</summary>
    private static readonly TimeSpan Silence = TimeSpan.FromMinutes(1);

    /// <summary>Cases between two signs of life.</summary>
    private const int Stride = 20;

    private readonly ConcurrentDictionary<long, Task> _running = new();
    private readonly CancellationTokenSource _ending = new();

    /// <summary>Starts a re-run of the draft as it stands; one that holds already, or is under way, is kept.</summary>
    public async Task<Outcome<RerunView>> StartAsync(Actor actor, string guideId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (await shelf.CurrentAsWrittenAsync(guideId, stop) is not { } current) return GuideRefusals.NotFound;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        if (GuideCheck.Of(draft.Guide).Count > 0) return GuideRefusals.Faulty;
        var plants = await DeterminedCases.ReadAsync(db, guideId, stop);
        var print = Fingerprint(draft, current.Guide, plants);
        var before = await LatestAsync(db, draft.Row.Id, stop);
        if (before is not null && before.Fingerprint == print && !IsStopped(before) && !HasFailed(before)) return Show(before, isCurrent: true);

        var now = clock.GetUtcNow();
        var row = new GuideRerunRow
        {
            DraftId = draft.Row.Id, Fingerprint = print, BeforeVersion = current.Guide.Version, Of = plants.Count, StartedAt = now, MovedAt = now,
        };
        db.Add(row);
        await db.SaveChangesAsync(stop);
        var work = Task.Run(() => WorkAsync(row.Id, current.Guide, draft.Guide, draft.Row.Learns, plants, _ending.Token), CancellationToken.None);
        _running[row.Id] = work;
        // Taken out from here, and not by the work itself, which may be over before it is put in.
        _ = work.ContinueWith(done => _running.TryRemove(row.Id, out _), TaskScheduler.Default);
        return Show(row, isCurrent: true);
    }

    /// <summary>The latest re-run of the draft; refused as "run it first" where there is none.</summary>
    public async Task<Outcome<RerunView>> ReadAsync(Actor actor, string guideId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (await shelf.CurrentAsWrittenAsync(guideId, stop) is not { } current) return GuideRefusals.NotFound;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        if (await LatestAsync(db, draft.Row.Id, stop) is not { } row) return GuideRefusals.RerunFirst;
        var plants = await DeterminedCases.ReadAsync(db, guideId, stop);
        return Show(row, row.Fingerprint == Fingerprint(draft, current.Guide, plants));
    }

    /// <summary>How far a re-run is, without looking whether it still holds and without its result; refused where it is gone.</summary>
    public async Task<Outcome<RerunView>> ProgressAsync(Actor actor, long rerunId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<GuideRerunRow>().AsNoTracking().Where(r => r.Id == rerunId).OrderBy(r => r.Id)
            .Select(r => new { r.BeforeVersion, r.Done, r.Of, r.MovedAt, r.FinishedAt, HasResult = r.ResultJson != null }).SingleOrDefaultAsync(stop);
        if (row is null) return GuideRefusals.RerunFirst;
        return new RerunView(
            rerunId, row.BeforeVersion, row.Done, row.Of, IsStopped(rerunId, row.MovedAt, row.FinishedAt), IsCurrent: true, null, row.FinishedAt is not null,
            HasFailed: row.FinishedAt is not null && !row.HasResult);
    }

    /// <summary>Waits for a re-run that this server does; at once where there is none.</summary>
    public Task WaitAsync(long rerunId, TimeSpan atMost, CancellationToken stop) =>
        _running.TryGetValue(rerunId, out var task) ? Task.WhenAny(task, Task.Delay(atMost, stop)) : Task.CompletedTask;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        await Task.WhenAll(_running.Values);
        _ending.Dispose();
    }

    /// <summary>What a re-run holds for: the draft's text, the version in use and every determined case.</summary>
    internal static string Fingerprint(DraftInHand draft, CropGuide current, IReadOnlyList<RerunPlant> plants)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(GuideText.Write(draft.Guide));
        hash.AppendData(Encoding.UTF8.GetBytes($"|{draft.Row.Learns}|{current.Version}|"));
        foreach (var plant in plants)
        {
            hash.AppendData(Encoding.UTF8.GetBytes($"{plant.Id} {plant.Taxon} {plant.IsProof};"));
            foreach (var answer in plant.Answers) hash.AppendData(Encoding.UTF8.GetBytes(Text(answer)));
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static string Text(Answer answer)
    {
        var bands = string.Join('|', answer.Bands.Select(b => FormattableString.Invariant($"{b.Low:R}..{b.High:R}")));
        return $"{answer.Trait}={string.Join('|', answer.States)}{bands} {answer.Sure} {answer.Person} {answer.Look};";
    }

    private async Task WorkAsync(long id, CropGuide before, CropGuide after, bool learns, IReadOnlyList<RerunPlant> plants, CancellationToken stop)
    {
        try
        {
            var rerun = GuideRerun.Of(before, after, learns, plants, done => Tell(id, done, plants.Count), stop);
            var now = clock.GetUtcNow();
            await using var db = await factory.CreateDbContextAsync(stop);
            var json = GuideEditText.Write(rerun);
            await db.Set<GuideRerunRow>().Where(r => r.Id == id)
                .ExecuteUpdateAsync(r => r.SetProperty(x => x.ResultJson, json).SetProperty(x => x.Done, plants.Count).SetProperty(x => x.MovedAt, now).SetProperty(x => x.FinishedAt, now), stop);
        }
        catch (OperationCanceledException)
        {
            // The server ends; the row without an end says so to whoever looks next.
        }
        catch (Exception failure)
        {
            Log.Failed(log, id, failure);
            await EndWithoutResultAsync(id);
        }
    }

    private async Task EndWithoutResultAsync(long id)
    {
        try
        {
            var now = clock.GetUtcNow();
            await using var db = await factory.CreateDbContextAsync(CancellationToken.None);
            await db.Set<GuideRerunRow>().Where(r => r.Id == id).ExecuteUpdateAsync(r => r.SetProperty(x => x.MovedAt, now).SetProperty(x => x.FinishedAt, now));
        }
        catch (Exception failure)
        {
            // Where even that cannot be written, the row looks as after a restart, and the run can be started again all the same.
            Log.EndNotKept(log, id, failure);
        }
    }

    // Called from the reckoning, which is synchronous and on a thread of its own.
    private void Tell(long id, int done, int of)
    {
        if (done % Stride != 0 || done == of) return;
        var now = clock.GetUtcNow();
        using var db = factory.CreateDbContext();
        db.Set<GuideRerunRow>().Where(r => r.Id == id).ExecuteUpdate(r => r.SetProperty(x => x.Done, done).SetProperty(x => x.MovedAt, now));
    }

    private static Task<GuideRerunRow?> LatestAsync(LibraryDbContext db, int draftId, CancellationToken stop) =>
        db.Set<GuideRerunRow>().AsNoTracking().Where(r => r.DraftId == draftId).OrderByDescending(r => r.Id).FirstOrDefaultAsync(stop);

    private bool IsStopped(GuideRerunRow row) => IsStopped(row.Id, row.MovedAt, row.FinishedAt);

    private bool IsStopped(long id, DateTimeOffset movedAt, DateTimeOffset? finishedAt) =>
        finishedAt is null && !_running.ContainsKey(id) && clock.GetUtcNow() - movedAt > Silence;

    private static bool HasFailed(GuideRerunRow row) => row.FinishedAt is not null && row.ResultJson is null;

    private RerunView Show(GuideRerunRow row, bool isCurrent) => new(
        row.Id, row.BeforeVersion, row.Done, row.Of, IsStopped(row), isCurrent, row.ResultJson is null ? null : GuideEditText.ReadRerun(row.ResultJson), row.FinishedAt is not null, HasFailed(row));

    private static partial class Log
    {
        [LoggerMessage(1, LogLevel.Error, "Re-run {Rerun} of a guide's determined cases failed. It can be started again from the draft.")]
        public static partial void Failed(ILogger log, long rerun, Exception failure);

        [LoggerMessage(2, LogLevel.Error, "That re-run {Rerun} failed could not be written down.")]
        public static partial void EndNotKept(ILogger log, long rerun, Exception failure);
    }
}
