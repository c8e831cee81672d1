using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.Provider;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Desk.Words;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Season;

/// <summary>Tells owners of open cases when their plant should flower or ripen by now. Run from time to time by the server.</summary>
public sealed class RemindSeason(IDbContextFactory<LibraryDbContext> factory, RankCase rank, GuestKeySeal seal, IDatabaseProvider provider, LibraryClock clock)
{
    // After that long the season is over, and a reminder would only annoy.
    private const int LatestDays = 60;
    private const int MostCases = 2000;

    /// <summary>Returns how many people were reminded.</summary>
    public async Task<int> RunAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var now = clock.Now;
        var today = clock.DayOf(now);
        var oldest = now.AddDays(-365);
        var open = await db.Set<CaseRow>().AsNoTracking()
            .Where(c => (c.State == CaseState.Open || c.State == CaseState.WaitingForLook) && (c.Specimen == Specimen.Plant || c.Specimen == Specimen.Seedling)
                && (c.OwnerId != null || c.GuestEmail != null) && c.FiledAt > oldest)
            .OrderBy(c => c.Id).Take(MostCases).ToListAsync(stop);
        var reminded = 0;
        foreach (var row in open)
        {
            if (await RemindAsync(row, today, now, stop)) reminded++;
        }
        return reminded;
    }

    private async Task<bool> RemindAsync(CaseRow row, DateOnly today, DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var look = await db.Set<LookRow>().AsNoTracking().Where(l => l.CaseId == row.Id).OrderByDescending(l => l.Number).FirstAsync(stop);
        // The forecast names a trait of the guide: it is read in the words of who is reminded.
        using var spoken = Languages.Speak(await CaseOwner.LanguageAsync(db, row, stop));
        if (SeasonForecast.Of(await rank.ReadAsync(db, row, stop), look.Date) is not { } forecast) return false;
        if (forecast.Day > today || forecast.Day < today.AddDays(-LatestDays)) return false;
        if (await db.Set<SeasonReminderRow>().AnyAsync(r => r.CaseId == row.Id && r.Stage == forecast.Stage && r.Look == look.Number, stop)) return false;

        db.Add(new SeasonReminderRow { CaseId = row.Id, Stage = forecast.Stage, Look = look.Number, At = now });
        await CaseOwner.TellAsync(db, row, seal, () => Words(row, forecast, look.Number), now, stop);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            // Another server was quicker with the same reminder.
            return false;
        }
        return true;
    }

    private static Notice Words(CaseRow row, SeasonForecast forecast, int look)
    {
        var heading = forecast.Stage == "flowering"
            ? Say[$"Case {row.Id}: is it in flower yet?"]
            : Say[$"Case {row.Id}: is the fruit ripe yet?"];
        var text = forecast.Stage == "flowering"
            ? Say[$"“{row.Title}” could be in flower by now. What would tell most then: {Lower(GuideBooks.Say(row.GuideId, forecast.Look))}."]
            : Say[$"“{row.Title}” could have ripe fruit by now. What would tell most then: {Lower(GuideBooks.Say(row.GuideId, forecast.Look))}."];
        var letter = $"{text}\n\n{Say["If you can see it, add a look to the case. If not, leave it; there is no hurry."]}\n\n{Say[$"The day is reckoned from the figures for this kind of plant ({forecast.Basis}), and plants do not read them."]}";
        return new Notice(NoticeKind.Season, Text($"season:{row.Id}:{look}:{forecast.Stage}"), heading, text, Text($"/cases/{row.Id}/look"), letter);
    }

    private static string Lower(string name) => name.Length == 0 ? name : char.ToLowerInvariant(name[0]) + name[1..];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
