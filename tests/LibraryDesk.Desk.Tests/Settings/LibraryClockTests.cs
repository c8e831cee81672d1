using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace LibraryDesk.Desk.Tests.Settings;

public class LibraryClockTests
{
    /// <summary>Against NodaTime 3.2.2, a reference library for dates and times with a tz database of its own.</summary>
    [Theory]
    [InlineData("Europe/Madrid")]
    [InlineData("America/Los_Angeles")]
    [InlineData("Asia/Kolkata")]
    [InlineData("Pacific/Kiritimati")]
    [InlineData("America/St_Johns")]
    // Their clocks were put forward and back at midnight.
    [InlineData("America/Sao_Paulo")]
    [InlineData("America/Havana")]
    [InlineData("Asia/Beirut")]
    [InlineData("America/Asuncion")]
    // And here the hour before midnight was left out.
    [InlineData("America/Scoresbysund")]
    public void Days_begin_and_moments_fall_on_days_as_a_reference_library_has_it(string name)
    {
        var clock = Of(name);
        var reference = DateTimeZoneProviders.Tzdb[name];
        var changes = reference.GetZoneIntervals(Instant.FromUtc(1990, 1, 1, 0, 0), Instant.FromUtc(2025, 1, 1, 0, 0)).Where(part => part.HasStart).Select(part => part.Start);
        Instant[] moments = [Instant.FromUtc(2000, 2, 29, 12, 0), .. changes.Skip(1)];
        foreach (var moment in moments)
        {
            for (var minutes = -36 * 60; minutes <= 36 * 60; minutes += 30)
            {
                var at = moment + Duration.FromMinutes(minutes);
                var day = at.InZone(reference).Date;
                Assert.Equal(day.ToDateOnly(), clock.DayOf(at.ToDateTimeOffset()));
                Assert.Equal(reference.AtStartOfDay(day).ToInstant().ToDateTimeOffset(), clock.BeginOf(day.ToDateOnly()));
            }
        }
    }

    [Fact]
    public void Every_zone_of_the_list_can_be_gone_by()
    {
        Assert.Contains("Europe/Madrid", LibraryClock.Zones);
        Assert.All(LibraryClock.Zones, name => Assert.Equal(name, Of(name).Zone.Id));
    }

    [Fact]
    public void A_library_that_chose_none_goes_by_the_server()
    {
        var server = new FakeTimeProvider(new DateTimeOffset(2026, 8, 1, 20, 0, 0, TimeSpan.Zero));
        server.SetLocalTimeZone(TimeZoneInfo.FindSystemTimeZoneById("Asia/Tokyo"));
        Assert.Equal(new DateOnly(2026, 8, 2), new LibraryClock(server).Today);
    }

    [Theory, OnBoth]
    public async Task An_evening_at_the_counter_is_still_today(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        (await library.Act<LibrarySettings>().ChangeAsync(ASeedLibrary.Librarian, 0, row => row.TimeZone = "America/Los_Angeles", default)).Allowed();
        var packets = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 2);
        // 19:00 there on 1 August, seven hours behind UTC.
        library.Clock.SetUtcNow(new DateTimeOffset(2026, 8, 2, 2, 0, 0, TimeSpan.Zero));
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(packets[0], ASeedLibrary.Member.UserId, DueOn: new DateOnly(2026, 8, 1)), default)).Allowed();
        await using var db = await library.OpenAsync();
        Assert.Equal(new DateOnly(2026, 8, 1), (await db.Set<LoanRow>().SingleAsync()).LentOn);

        Assert.Single(await DayAsync(library));
        Assert.Equal(0, await OverdueAsync(library));
        library.Clock.Advance(TimeSpan.FromHours(4.9));
        Assert.Single(await DayAsync(library));
        Assert.Equal(0, await OverdueAsync(library));
        library.Clock.Advance(TimeSpan.FromHours(0.2));
        Assert.Empty(await DayAsync(library));
        Assert.Equal(1, await OverdueAsync(library));
    }

    [Theory, OnBoth]
    public async Task A_morning_far_to_the_east_is_no_day_to_come(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        (await library.Act<LibrarySettings>().ChangeAsync(ASeedLibrary.Librarian, 0, row => row.TimeZone = "Pacific/Auckland", default)).Allowed();
        // 08:00 there on 2 August, twelve hours before UTC.
        library.Clock.SetUtcNow(new DateTimeOffset(2026, 8, 1, 20, 0, 0, TimeSpan.Zero));
        var code = (await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 1)).Single();
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(code, ASeedLibrary.Member.UserId, new DateOnly(2026, 8, 2)), default)).Allowed();
        Assert.Single(await DayAsync(library));
    }

    [Theory, OnBoth]
    public async Task A_zone_that_is_none_is_refused_and_a_change_reaches_the_server_beside(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var settings = library.Act<LibrarySettings>();
        Assert.Equal("settings.time-zone", (await settings.ChangeAsync(ASeedLibrary.Librarian, 0, row => row.TimeZone = "Europe/Quillbrook", default)).Refusal?.Code);
        Assert.Equal("UTC", library.Act<LibraryClock>().Zone.Id);
        (await settings.ChangeAsync(ASeedLibrary.Librarian, 0, row => row.TimeZone = "Europe/Madrid", default)).Allowed();
        await using var beside = library.AnotherServer();
        await beside.GetRequiredService<LibrarySettings>().ReadAsync(default);
        Assert.Equal("Europe/Madrid", beside.GetRequiredService<LibraryClock>().Zone.Id);
    }

    private static LibraryClock Of(string name)
    {
        var server = new FakeTimeProvider();
        server.SetLocalTimeZone(TimeZoneInfo.FindSystemTimeZoneById(name));
        return new LibraryClock(server);
    }

    private static async Task<IReadOnlyList<CounterLine>> DayAsync(TestLibrary library) =>
        (await library.Act<CounterDay>().ReadAsync(ASeedLibrary.Librarian, default)).Allowed().Lines;

    private static async Task<int> OverdueAsync(TestLibrary library) =>
        (await library.Act<MemberLoans>().CountOverdueAsync(ASeedLibrary.Librarian, default)).Allowed();
}
