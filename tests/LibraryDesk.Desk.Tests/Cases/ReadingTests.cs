using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.People;
using LibraryDesk.Photos;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Cases;

public class ReadingTests
{
    private readonly Actor _member = Actor.Member(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task The_owner_reads_the_odds_before_and_after_each_look(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var view = await ReadAsync(library, await ACase.FiledAsync(library, _member), _member);
        Assert.True(Baccatum(view.Latest.After!) > Baccatum(view.Latest.Before!));
        Assert.True(view.MayChange);
    }

    [Theory, OnBoth]
    public async Task A_volunteer_reads_answers_and_photos_but_no_odds_before_the_seal(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var view = await ReadAsync(library, await ACase.FiledAsync(library, _member), Actor.Volunteer(Guid.NewGuid()));
        Assert.Null(view.Ranking);
        Assert.All(view.Looks, look => Assert.Null(look.After));
        Assert.Single(view.Latest.Answers);
        Assert.False(view.MayChange);
    }

    [Theory, OnBoth]
    public async Task Lists_hold_own_cases_only(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var mine = await ACase.FiledAsync(library, _member);
        await ACase.FiledAsync(library, Actor.Member(Guid.NewGuid()));
        var list = library.Act<ListCases>();
        Assert.Equal([mine], (await list.OwnAsync(_member, default)).Select(c => c.Case.Id));
        Assert.Empty(await list.OwnAsync(Actor.Visitor, default));
        Assert.Equal(2, (await list.CountAsync(default)).Open);
    }

    [Theory, OnBoth]
    public async Task A_guest_lists_what_the_link_opens(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ACase.FiledAsync(library, _member);
        var started = await library.Act<StartCase>().StartAsync(Actor.Visitor, ACase.Pepper with { GuestEmail = "mo@example.org" }, default);
        var (id, key) = started.Match(s => (s.CaseIds[0], s.GuestKey!), _ => default);
        Assert.Equal([id], (await library.Act<ListCases>().OwnAsync(Actor.Guest("0." + key), default)).Select(c => c.Case.Id));
    }

    [Theory, OnBoth]
    public async Task A_photo_opens_to_those_who_see_the_case_and_to_nobody_once_removed(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        using var file = ACase.Photo();
        var photo = (await library.Act<AddPhoto>().AddAsync(_member, id, null, new SentPhoto("", null), file, default)).Match(p => p.Id, _ => default);
        var open = library.Act<OpenPhoto>();
        await using (var bytes = (await open.OpenAsync(_member, photo, PhotoSize.Small, default)).Match(s => s, _ => null!)) Assert.True(bytes.Length > 0);
        Assert.NotNull((await open.OpenAsync(Actor.Librarian(Guid.NewGuid()), photo, PhotoSize.Small, default)).Refusal);
        await library.Act<RemovePhoto>().RemoveAsync(_member, id, photo, default);
        Assert.NotNull((await open.OpenAsync(_member, photo, PhotoSize.Small, default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task A_follower_is_told_when_the_case_grows(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        var since = (await ReadAsync(library, id, _member)).LastEvent;
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        var follow = await library.Act<FollowCase>().FollowAsync(_member, id, since, stop.Token);
        await using var changes = follow.Match(c => c, _ => null!).Newest.GetAsyncEnumerator(stop.Token);
        var next = changes.MoveNextAsync().AsTask();
        await library.Act<AddLook>().AddAsync(_member, id, null, null, default);
        Assert.True(await next);
        Assert.Equal(CaseRefusals.NotFoundCode, (await library.Act<FollowCase>().FollowAsync(Actor.Visitor, id, 0, default)).Refusal?.Code);
    }

    private static double Baccatum(Desk.Cases.Odds.CaseRanking ranking) => ranking.Ranking.Candidates.Single(c => c.Id == "capsicum-baccatum").Probability;

    private static async Task<CaseView> ReadAsync(TestLibrary library, long id, Actor actor) =>
        (await library.Act<ReadCase>().ReadAsync(actor, id, default)).Match(view => view, no => throw new InvalidOperationException(no.Message));
}
