using LibraryDesk.Data.Mail;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Desk.Mail;

/// <summary>
/// Sends what is due. A letter that fails is tried again later, a little later each time. Several servers may run on one library: who sends a
/// letter claims it first. A server that stops between the sending and its note leaves a letter that is sent once more.
/// </summary>
public sealed partial class SendDueMail(
    IDbContextFactory<LibraryDbContext> factory, IMailSender sender, TimeProvider clock, ILogger<SendDueMail> log)
{
    private const int MostTries = 8;
    private static readonly TimeSpan ClaimFor = TimeSpan.FromMinutes(10);

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
            if (!await ClaimAsync(db, letter, stop)) continue;
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

    // Put off in the database by whoever sees it due first; one server alone changes the row.
    private async Task<bool> ClaimAsync(LibraryDbContext db, OutgoingMailRow letter, CancellationToken stop)
    {
        var (seen, until) = (letter.DueAt, clock.GetUtcNow() + ClaimFor);
        return await db.Set<OutgoingMailRow>().Where(row => row.Id == letter.Id && row.SentAt == null && row.DueAt == seen)
            .ExecuteUpdateAsync(row => row.SetProperty(mail => mail.DueAt, until), stop) == 1;
    }

    private static partial class Log
    {
        [LoggerMessage(1, LogLevel.Warning, "Letter {Letter} did not leave at try {Tries}; it stays in the queue.")]
        public static partial void NotSent(ILogger log, long letter, int tries, Exception failure);
    }
}
