using LibraryDesk.Data.Mail;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Desk.Mail;

/// <summary>Sends what is due. A letter that fails is tried again later, a little later each time.</summary>
public sealed partial class SendDueMail(
    IDbContextFactory<LibraryDbContext> factory, IMailSender sender, TimeProvider clock, ILogger<SendDueMail> log)
{
    private const int MostTries = 8;

    /// <summary>Returns how many letters left.</summary>
    public async Task<int> RunAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var now = clock.GetUtcNow();
        var due = await db.Set<OutgoingMailRow>()
            .Where(letter => letter.SentAt == null && letter.DueAt <= now && letter.Tries < MostTries)
            .OrderBy(letter => letter.DueAt).ThenBy(letter => letter.Id).Take(50).ToListAsync(stop);
        var sent = 0;
        foreach (var letter in due)
        {
            try
            {
                await sender.SendAsync(letter, stop);
                letter.SentAt = clock.GetUtcNow();
                sent++;
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                letter.Tries++;
                letter.DueAt = now + TimeSpan.FromMinutes(Math.Pow(2, letter.Tries));
                Log.NotSent(log, letter.Id, letter.Tries, failure);
            }
            await db.SaveChangesAsync(stop);
        }
        return sent;
    }

    private static partial class Log
    {
        [LoggerMessage(1, LogLevel.Warning, "Letter {Letter} did not leave at try {Tries}; it stays in the queue.")]
        public static partial void NotSent(ILogger log, long letter, int tries, Exception failure);
    }
}
