using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Notices;
using LibraryDesk.Desk.Calendar;
using LibraryDesk.Desk.Cases.Season;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Notices;

/// <summary>Reminders when a plant should flower or ripen, and the calendar that shows the same days. Figures: growing.json, each with its source.</summary>
public sealed class SeasonTests
{
    [Fact]
    public void Days_to_flower_and_to_ripe_are_the_short_figures_of_the_kind()
    {
        // growers' experience, from memory, in growing.json: peppers 30 to 60 days from setting out to flower.
        Assert.Equal(30, SeasonForecast.DaysTo("flowering", "capsicum-baccatum")?.Days);
        // Ruiz & Parera 2017: annuum seed settled from 56 days after flowering.
        Assert.Equal(56, SeasonForecast.DaysTo("ripe-fruit", "capsicum-annuum")?.Days);
        // 90 days from setting out to ripe, less 30 to flower (from memory).
        Assert.Equal(60, SeasonForecast.DaysTo("ripe-fruit", "capsicum-chinense")?.Days);
        Assert.Null(SeasonForecast.DaysTo("flowering", "something-else"));
    }

    [Theory, OnBoth]
    public async Task The_owner_is_reminded_once_when_the_plant_should_flower(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await OnlyLeavesAsync(scene);
        await ChooseAsync(scene, NoticeWay.Both);
        var act = scene.Library.Act<RemindSeason>();

        scene.Library.Clock.SetUtcNow(new DateTimeOffset(2026, 8, 30, 12, 0, 0, TimeSpan.Zero));
        Assert.Equal(0, await act.RunAsync(default));
        scene.Library.Clock.SetUtcNow(new DateTimeOffset(2026, 8, 31, 12, 0, 0, TimeSpan.Zero));
        Assert.Equal(1, await act.RunAsync(default));
        Assert.Equal(0, await act.RunAsync(default));

        var notice = (await scene.RowsAsync<NoticeRow>()).Single();
        Assert.Equal((NoticeKind.Season, $"/cases/{scene.CaseId}/look"), (notice.Kind, notice.Address));
        Assert.Contains("growers' experience", (await scene.RowsAsync<OutgoingMailRow>()).Single().Body, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_case_that_is_done_or_a_fruit_alone_reminds_of_nothing(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await OnlyLeavesAsync(scene);
        await scene.FileAsync("Fruit from a market", row => row.Specimen = Specimen.FruitAlone, "unripe-fruit");
        await using (var db = await scene.Library.OpenAsync())
            await db.Set<CaseRow>().Where(c => c.Id == scene.CaseId).ExecuteUpdateAsync(c => c.SetProperty(x => x.State, CaseState.Determined));
        scene.Library.Clock.SetUtcNow(new DateTimeOffset(2026, 9, 20, 12, 0, 0, TimeSpan.Zero));

        Assert.Equal(0, await scene.Library.Act<RemindSeason>().RunAsync(default));
    }

    [Theory, OnBoth]
    public async Task The_calendar_shows_the_same_day_to_whoever_holds_the_address(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await OnlyLeavesAsync(scene);
        var links = scene.Library.Act<CalendarLinks>();
        var first = ReviewScene.Value(await links.MakeAsync(scene.Owner, default));

        var entry = ReviewScene.Value(await scene.Library.Act<ReadCalendar>().ReadAsync(first, default)).Entries.Single();
        Assert.Equal(new DateOnly(2026, 8, 31), entry.Day);
        Assert.Contains("Pepper in an unmarked pot", entry.Text, StringComparison.Ordinal);

        var second = ReviewScene.Value(await links.MakeAsync(scene.Owner, default));
        Assert.Equal(ReadCalendar.GoneCode, (await scene.Library.Act<ReadCalendar>().ReadAsync(first, default)).Refusal?.Code);
        ReviewScene.Value(await scene.Library.Act<ReadCalendar>().ReadAsync(second, default));
        ReviewScene.Value(await links.TakeBackAsync(scene.Owner, default));
        Assert.Equal(ReadCalendar.GoneCode, (await scene.Library.Act<ReadCalendar>().ReadAsync(second, default)).Refusal?.Code);
        Assert.Equal(ReadCalendar.GoneCode, (await scene.Library.Act<ReadCalendar>().ReadAsync("", default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Somebody_elses_calendar_holds_nothing_of_mine(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await OnlyLeavesAsync(scene);
        var key = ReviewScene.Value(await scene.Library.Act<CalendarLinks>().MakeAsync(scene.Wren, default));

        Assert.Empty(ReviewScene.Value(await scene.Library.Act<ReadCalendar>().ReadAsync(key, default)).Entries);
    }

    [Theory, OnBoth]
    public async Task Nobody_is_asked_by_the_calendar_to_save_seed_that_is_called_back(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var packet = (await scene.Library.PacketsAsync((await scene.Library.ReceiveAsync()).Lot.ToString()!, 1)).Single();
        (await scene.Library.Act<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(packet, scene.Owner.UserId, DueOn: new DateOnly(2026, 11, 30)), default)).Allowed();
        var key = ReviewScene.Value(await scene.Library.Act<CalendarLinks>().MakeAsync(scene.Owner, default));
        Assert.Contains(await DaysAsync(scene, key), entry => entry.Address == $"/p/{packet}");

        (await scene.Library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, packet, "The label was swapped.", default)).Allowed();
        Assert.DoesNotContain(await DaysAsync(scene, key), entry => entry.Address == $"/p/{packet}");
    }

    private static async Task<IReadOnlyList<CalendarEntry>> DaysAsync(ReviewScene scene, string key) =>
        ReviewScene.Value(await scene.Library.Act<ReadCalendar>().ReadAsync(key, default)).Entries;

    private static async Task OnlyLeavesAsync(ReviewScene scene)
    {
        await using var db = await scene.Library.OpenAsync();
        await db.Set<LookRow>().Where(l => l.CaseId == scene.CaseId).ExecuteUpdateAsync(l => l.SetProperty(x => x.Parts, "leaves"));
        await db.Set<AnswerRow>().Where(a => a.CaseId == scene.CaseId).ExecuteDeleteAsync();
    }

    private static async Task ChooseAsync(ReviewScene scene, NoticeWay way) =>
        ReviewScene.Value(await scene.Library.Act<NoticeChoices>().ChangeAsync(scene.Owner, new Dictionary<NoticeKind, NoticeWay> { [NoticeKind.Season] = way }, default));
}
