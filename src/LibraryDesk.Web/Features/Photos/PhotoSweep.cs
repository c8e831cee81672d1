using LibraryDesk.Desk.Cases.Sweeping;
using LibraryDesk.Desk.People;

namespace LibraryDesk.Web.Features.Photos;

/// <summary>Clears away photos that nothing on record points to, an hour after the start and then once a day.</summary>
internal sealed partial class PhotoSweep(SweepPhotos sweep, TimeProvider clock, ILogger<PhotoSweep> log) : BackgroundService
{
    private static readonly TimeSpan FirstAfter = TimeSpan.FromHours(1);
    private static readonly TimeSpan Pause = TimeSpan.FromDays(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Delay(FirstAfter, clock, stoppingToken);
        using var timer = new PeriodicTimer(Pause, clock);
        do
        {
            try
            {
                var outcome = await sweep.RunAsync(Actor.System, stoppingToken);
                if (outcome.TryGet(out var swept, out var no)) Log.Swept(log, swept.Rows, swept.Photos, swept.Unfinished);
                else Log.Refused(log, no.Code);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                Log.SweepFailed(log, failure);
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private static partial class Log
    {
        [LoggerMessage(1, LogLevel.Information, "Photos cleared away: {Rows} past putting back, {Photos} that nothing points to, {Unfinished} half-written.")]
        public static partial void Swept(ILogger log, int rows, int photos, int unfinished);

        [LoggerMessage(2, LogLevel.Warning, "The photos were not swept: {Code}. Check that the photo folder belongs to this library.")]
        public static partial void Refused(ILogger log, string code);

        [LoggerMessage(3, LogLevel.Error, "A sweep of the photos failed; tomorrow's tries again.")]
        public static partial void SweepFailed(ILogger log, Exception failure);
    }
}
