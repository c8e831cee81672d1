using LibraryDesk.Desk.Mail;

namespace LibraryDesk.Web.Features.Mail;

/// <summary>Empties the outgoing mail every few seconds.</summary>
internal sealed partial class MailPost(SendDueMail mail, TimeProvider clock, ILogger<MailPost> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, clock);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await mail.RunAsync(stoppingToken);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                Log.RoundFailed(log, failure);
            }
        }
    }

    private static partial class Log
    {
        [LoggerMessage(1, LogLevel.Error, "A round of sending mail failed; the next one tries again.")]
        public static partial void RoundFailed(ILogger log, Exception failure);
    }
}
