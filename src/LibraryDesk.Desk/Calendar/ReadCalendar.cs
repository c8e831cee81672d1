using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Notices;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Cases.Season;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Desk.Words.Guides;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Calendar;

/// <summary>One day in a person's calendar.</summary>
/// <param name="Id">The same for the same thing every time, so that a calendar moves it instead of showing it twice.</param>
/// <param name="Day">The whole day it stands on.</param>
/// <param name="Text">Why, in a sentence or two. Nothing of anybody else.</param>
/// <param name="Address">Where to go, beginning with a slash.</param>
public sealed record CalendarEntry(string Id, DateOnly Day, string Heading, string Text, string Address);

/// <summary>What stands in the feed of one person.</summary>
/// <param name="Now">The moment it was read.</param>
/// <param name="Entries">By day.</param>
public sealed record CalendarView(DateTimeOffset Now, IReadOnlyList<CalendarEntry> Entries);

/// <summary>Reads the feed behind a secret address: the person's own looks to come, looks asked for, and seed that is due back.</summary>
public sealed class ReadCalendar(IDbContextFactory<LibraryDbContext> factory, ListCases cases, MemberLoans loans, LibraryClock clock)
{
    public const string GoneCode = "calendar.gone";

    private const int DaysBack = 90;

    public async Task<Outcome<CalendarView>> ReadAsync(string key, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var hash = OneTimeCode.Hash(key ?? "");
        var person = await db.Set<CalendarLinkRow>().Where(l => l.KeyHash == hash)
            .Join(db.Users.Where(u => u.ErasedAt == null), l => l.PersonId, u => u.Id, (l, u) => (Guid?)u.Id).SingleOrDefaultAsync(stop);
        if (person is not { } me) return new Refusal(GoneCode, "This calendar address was taken back. Make a new one under My account.");

        // A calendar program asks in no language of its own.
        using var spoken = Languages.Speak(await ChosenLanguage.OfAsync(db, me, stop));
        var own = await cases.OwnAsync(Actor.Member(me), stop);
        var growing = own.Where(c => c.Grows && c.Case.State is CaseState.Open or CaseState.WaitingForLook).ToList();
        var ids = growing.Select(c => c.Case.Id).ToArray();
        var looks = (await db.Set<LookRow>().Where(l => ids.Contains(l.CaseId)).Select(l => new { l.CaseId, l.Number, l.Date }).ToListAsync(stop))
            .GroupBy(l => l.CaseId).ToDictionary(l => l.Key, l => l.MaxBy(x => x.Number)!);
        var lent = (await loans.OfAsync(Actor.Member(me), me, stop)).Match(list => list.Loans, _ => []);

        var oldest = clock.Today.AddDays(-DaysBack);
        IEnumerable<CalendarEntry> entries =
        [
            .. own.SelectMany(c => c.Requests.Select(r => Asked(c.Case, r))),
            .. growing.Select(c => c.Ranking is { } ranking && SeasonForecast.Of(ranking, looks[c.Case.Id].Date) is { } forecast ? Season(c.Case, forecast, looks[c.Case.Id].Number) : null).OfType<CalendarEntry>(),
            // Nobody is asked to save from seed that is called back.
            .. lent.Where(l => l.IsOpen && !l.IsRecalled && l.DueOn is not null).Select(Due),
        ];
        return new CalendarView(clock.Now, [.. entries.Where(e => e.Day >= oldest).OrderBy(e => e.Day).ThenBy(e => e.Id, StringComparer.Ordinal)]);
    }

    private CalendarEntry Asked(CaseRow row, LookRequestRow request) => new(
        Text($"look-{request.Id}"), clock.DayOf(request.At), Say[$"Case {row.Id}: a look is asked for"], GuideBooks.Say(row.GuideId, request.Message), Text($"/cases/{row.Id}"));

    private static CalendarEntry Season(CaseRow row, SeasonForecast forecast, int look) => new(
        Text($"season-{row.Id}-{look}-{forecast.Stage}"),
        forecast.Day,
        forecast.Stage == "flowering" ? Say[$"Case {row.Id}: in flower yet?"] : Say[$"Case {row.Id}: ripe yet?"],
        Say[$"“{row.Title}”. What would tell most then: {forecast.Look}."],
        Text($"/cases/{row.Id}/look"));

    private static CalendarEntry Due(MemberLoan loan) => new(
        Text($"seed-{loan.LoanId}"),
        loan.DueOn!.Value,
        loan.Variety is null ? Say[$"Seed hoped for: packet {loan.PacketCode}"] : Say[$"Seed hoped for: ‘{Quotes.Inside(loan.Variety)}’"],
        Say["Save from several plants, and bring what you can. None this year? Say so on the packet’s page."],
        Text($"/p/{loan.PacketCode}"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
