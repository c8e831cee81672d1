using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Notices;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Notices;

public sealed class NoticeTests
{
    [Theory, OnBoth]
    public async Task Who_chose_nothing_is_told_of_a_look_by_letter_and_in_the_app(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await AskAsync(scene, "A photo of the flower, please.");

        var notice = (await ListAsync(scene)).Rows.Single();
        Assert.Equal((NoticeKind.LookAsked, $"/cases/{scene.CaseId}"), (notice.Kind, notice.Address));
        Assert.Contains("A photo of the flower, please.", notice.Text, StringComparison.Ordinal);
        var letter = (await scene.RowsAsync<OutgoingMailRow>()).Single();
        Assert.Contains($"https://desk.example.org/cases/{scene.CaseId}", letter.Body, StringComparison.Ordinal);
        Assert.Contains("/account/notices", letter.Body, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_choice_decides_which_way_the_word_goes(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);

        await ChooseAsync(scene, NoticeKind.LookAsked, NoticeWay.InApp);
        await AskAsync(scene, "first");
        Assert.Equal((1, 0), await ToldAsync(scene));

        await ChooseAsync(scene, NoticeKind.LookAsked, NoticeWay.Email);
        scene.Library.Clock.Advance(TimeSpan.FromMinutes(1));
        await AskAsync(scene, "second");
        Assert.Equal((1, 1), await ToldAsync(scene));

        await ChooseAsync(scene, NoticeKind.LookAsked, NoticeWay.Off);
        scene.Library.Clock.Advance(TimeSpan.FromMinutes(1));
        await AskAsync(scene, "third");
        Assert.Equal((1, 1), await ToldAsync(scene));
    }

    [Theory, OnBoth]
    public async Task A_determination_is_told_to_the_owner_and_to_nobody_else(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database, opinionsNeeded: 1);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);

        Assert.Equal(NoticeKind.Decided, (await ListAsync(scene)).Rows.Single().Kind);
        Assert.Empty(ReviewScene.Value(await scene.Library.Act<ReadNotices>().ReadAsync(scene.Wren, default)).Rows);
    }

    [Theory, OnBoth]
    public async Task A_notice_is_read_by_coming_to_its_page_another_way(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await AskAsync(scene, "first");
        var notices = scene.Library.Act<ReadNotices>();
        await notices.SeenAsync(scene.Wren, $"/cases/{scene.CaseId}", default);
        await notices.SeenAsync(scene.Owner, $"/cases/{scene.CaseId}1", default);
        await notices.SeenAsync(Actor.Visitor, $"/cases/{scene.CaseId}", default);
        Assert.Equal(1, await notices.UnreadAsync(scene.Owner, default));

        await notices.SeenAsync(scene.Owner, $"/cases/{scene.CaseId}", default);
        Assert.Equal(0, await notices.UnreadAsync(scene.Owner, default));
    }

    [Theory, OnBoth]
    public async Task A_look_nobody_waits_for_any_more_is_not_new(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database, opinionsNeeded: 1);
        await AskAsync(scene, "first");
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);

        var list = await ListAsync(scene);
        Assert.Equal([NoticeKind.Decided], list.Rows.Where(n => n.ReadAt is null).Select(n => n.Kind));
        Assert.Equal(1, list.Unread);
    }

    [Theory, OnBoth]
    public async Task Reading_is_the_persons_own_and_takes_the_count_down(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await AskAsync(scene, "first");
        scene.Library.Clock.Advance(TimeSpan.FromMinutes(1));
        await AskAsync(scene, "second");
        var act = scene.Library.Act<ReadNotices>();
        var newest = (await ListAsync(scene)).Rows[0];
        Assert.Contains("second", newest.Text, StringComparison.Ordinal);

        Assert.Equal(ReadNotices.GoneCode, (await act.OpenAsync(scene.Wren, newest.Id, default)).Refusal?.Code);
        Assert.Equal(2, await act.UnreadAsync(scene.Owner, default));
        ReviewScene.Value(await act.OpenAsync(scene.Owner, newest.Id, default));
        Assert.Equal(1, await act.UnreadAsync(scene.Owner, default));
        Assert.Equal(0, ReviewScene.Value(await act.ReadAllAsync(scene.Owner, scene.Library.Clock.GetUtcNow(), default)).Unread);
        Assert.Equal(0, await act.UnreadAsync(Actor.Visitor, default));
    }

    [Theory, OnBoth]
    public async Task What_came_after_the_list_was_shown_stays_unread(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await AskAsync(scene, "first");
        var seen = scene.Library.Clock.GetUtcNow();
        scene.Library.Clock.Advance(TimeSpan.FromMinutes(1));
        await AskAsync(scene, "second");

        Assert.Equal(1, ReviewScene.Value(await scene.Library.Act<ReadNotices>().ReadAllAsync(scene.Owner, seen, default)).Unread);
    }

    [Theory, OnBoth]
    public async Task A_recall_is_told_once_and_only_to_holders(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using (var db = await library.OpenAsync())
        {
            foreach (var (who, mail) in new[] { (ASeedLibrary.Member, "m@example.org"), (ASeedLibrary.OtherMember, "o@example.org") })
                db.Add(new Data.People.DeskUser { Id = who.UserId!.Value, UserName = mail, NormalizedUserName = mail.ToUpperInvariant(), Email = mail, SecurityStamp = "s" });
            await db.SaveChangesAsync();
        }
        var code = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "round fruit came up", default)).Allowed().Hold.Value;
        (await library.Act<NoticeChoices>().ChangeAsync(ASeedLibrary.Member, new Dictionary<NoticeKind, NoticeWay> { [NoticeKind.Recall] = NoticeWay.InApp }, default)).Allowed();

        Assert.Equal(1, (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Letters);
        Assert.Equal(0, (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Letters);

        var notice = (await library.Act<ReadNotices>().ReadAsync(ASeedLibrary.Member, default)).Allowed().Rows.Single();
        Assert.Equal((NoticeKind.Recall, $"/p/{code}"), (notice.Kind, notice.Address));
        Assert.Empty((await library.Act<ReadNotices>().ReadAsync(ASeedLibrary.OtherMember, default)).Allowed().Rows);
        await using var after = await library.OpenAsync();
        Assert.Empty(await after.Set<OutgoingMailRow>().ToListAsync());
    }

    [Theory, OnBoth]
    public async Task Erasing_a_person_takes_their_notices_choices_and_calendar_along(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await AskAsync(scene, "first");
        await ChooseAsync(scene, NoticeKind.Season, NoticeWay.Off);
        ReviewScene.Value(await scene.Library.Act<Desk.Calendar.CalendarLinks>().MakeAsync(scene.Owner, default));

        await using (var scope = Microsoft.Extensions.DependencyInjection.ServiceProviderServiceExtensions.CreateAsyncScope(scene.Library.Services))
            ReviewScene.Value(await Microsoft.Extensions.DependencyInjection.ServiceProviderServiceExtensions.GetRequiredService<PeopleDirectory>(scope.ServiceProvider).EraseAsync(scene.Owner, scene.Owner.UserId!.Value));

        Assert.Empty(await scene.RowsAsync<NoticeRow>());
        Assert.Empty(await scene.RowsAsync<NoticeChoiceRow>());
        Assert.Empty(await scene.RowsAsync<CalendarLinkRow>());
    }

    [Theory, OnBoth]
    public async Task A_guests_later_letters_carry_the_link_again(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var started = ReviewScene.Value(await scene.Library.Act<StartCase>().StartAsync(Actor.Visitor, new NewCase("capsicum", "From a swap table", Specimen.Plant, 1, "guest@example.org", false, "https://desk.example.org"), default));
        var id = started.CaseIds[0];
        await using (var db = await scene.Library.OpenAsync())
            await db.Set<CaseRow>().Where(c => c.Id == id).ExecuteUpdateAsync(c => c.SetProperty(x => x.State, CaseState.Open).SetProperty(x => x.FiledAt, scene.Library.Clock.GetUtcNow()));

        ReviewScene.Value(await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, id, new LookWanted(null, null, "Its leaf from below."), default));

        var letter = (await scene.RowsAsync<OutgoingMailRow>()).OrderBy(m => m.Id).Last();
        Assert.Equal("guest@example.org", letter.To);
        Assert.Contains($"https://desk.example.org/c/{started.GuestKey}", letter.Body, StringComparison.Ordinal);
        Assert.DoesNotContain(await scene.RowsAsync<CaseRow>(), row => row.GuestKeyLocked?.Contains(started.GuestKey!, StringComparison.Ordinal) == true);
    }

    private static async Task AskAsync(ReviewScene scene, string message) =>
        ReviewScene.Value(await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, scene.CaseId, new LookWanted(null, null, message), default));

    private static async Task ChooseAsync(ReviewScene scene, NoticeKind kind, NoticeWay way) =>
        ReviewScene.Value(await scene.Library.Act<NoticeChoices>().ChangeAsync(scene.Owner, new Dictionary<NoticeKind, NoticeWay> { [kind] = way }, default));

    private static async Task<NoticeList> ListAsync(ReviewScene scene) =>
        ReviewScene.Value(await scene.Library.Act<ReadNotices>().ReadAsync(scene.Owner, default));

    private static async Task<(int InApp, int Letters)> ToldAsync(ReviewScene scene) =>
        ((await scene.RowsAsync<NoticeRow>()).Count, (await scene.RowsAsync<OutgoingMailRow>()).Count);
}
