using LibraryDesk.Desk.Cases.Season;

namespace LibraryDesk.Web.Features.Notices;

/// <summary>Looks every hour which plants should flower or ripen by now. Two servers may run it; each reminder goes out once.</summary>
internal sealed partial class SeasonWatch(RemindSeason remind, TimeProvider clock, ILogger<SeasonWatch> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromHours(1);

    // Not in the first moments, where a start has enough to do.
    private static readonly TimeSpan First = TimeSpan.FromMinutes(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Delay(First, clock, stoppingToken);
        using var timer = new PeriodicTimer(Pause, clock);
        do
        {
            try
            {
                await remind.RunAsync(stoppingToken);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                Log.RoundFailed(log, failure);
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private static partial class Log
    {
        [LoggerMessage(1, LogLevel.Error, "A round of season reminders failed; the next one tries again.")]
        public static partial void RoundFailed(ILogger log, Exception failure);
    }
}
