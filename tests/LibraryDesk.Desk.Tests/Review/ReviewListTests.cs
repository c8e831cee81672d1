using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.TestServers;
using static LibraryDesk.Desk.Tests.Review.ReviewScene;

namespace LibraryDesk.Desk.Tests.Review;

public sealed class ReviewListTests
{
    [Fact]
    public void An_opinion_that_may_settle_a_case_comes_before_a_first_one() =>
        Assert.Equal([2, 1], Ids(Line(1, waiting: 5), Line(2, waiting: 5, opinions: 1)));

    [Fact]
    public void Long_waiting_outweighs_it_in_the_end() =>
        Assert.Equal([1, 2], Ids(Line(1, waiting: 36), Line(2, waiting: 5, opinions: 1)));

    [Fact]
    public void A_closing_season_comes_before_an_equal_case() =>
        Assert.Equal([2, 1], Ids(Line(1, waiting: 5), Line(2, waiting: 5, closing: true)));

    [Fact]
    public void What_I_sealed_and_did_not_finish_stands_first_and_what_I_finished_last() =>
        Assert.Equal([3, 1, 2], Ids(Line(1), Line(2) with { Mine = MyPart.Finished }, Line(3) with { Mine = MyPart.InReview }));

    [Fact]
    public void A_case_that_waits_for_a_look_comes_after_open_ones() =>
        Assert.Equal([2, 1], Ids(Line(1, waiting: 50) with { State = CaseState.WaitingForLook }, Line(2)));

    [Fact]
    public void A_case_with_enough_opinions_in_review_needs_nobody_now() =>
        Assert.Equal([1, 2], Ids(Line(1), Line(2, opinions: 2) with { OpinionWanted = 0 }));

    [Theory, OnBoth]
    public async Task The_list_says_which_opinion_is_wanted_and_what_the_plant_carries(string database)
    {
        await using var scene = await OpenAsync(database);
        scene.Library.Clock.Advance(TimeSpan.FromDays(9));
        await scene.GiveAsync(scene.Tam, Annuum);
        var line = Assert.Single((await ListAsync(scene, scene.Wren)).Lines);
        Assert.Equal((2, 9, MyPart.NotYet, 1), (line.OpinionWanted, line.WaitingDays, line.Mine, line.Looks));
        Assert.Equal(["leaves", "flowers"], line.Parts);
    }

    [Theory, OnBoth]
    public async Task The_same_list_comes_out_whatever_the_opinions_and_the_odds_say(string database)
    {
        await using var scene = await OpenAsync(database);
        var (other, _) = await scene.FileAsync("Chilli from a swap table");
        await scene.GiveAsync(scene.Tam, Annuum);
        await scene.GiveAsync(scene.Tam, Pubescens, other);
        var lines = (await ListAsync(scene, scene.Wren)).Lines;
        Assert.Equal(lines[0] with { CaseId = 0, Title = "", Parts = [], PartNames = [] }, lines[1] with { CaseId = 0, Title = "", Parts = [], PartNames = [] });
    }

    [Theory, OnBoth]
    public async Task Determined_cases_are_listed_newest_first_found_by_their_words_and_gone_once_opened_again(string database)
    {
        await using var scene = await OpenAsync(database);
        var (other, _) = await scene.FileAsync("Chilli from a swap table");
        var (list, alone) = (scene.Library.Act<ListDetermined>(), scene.Library.Act<DetermineAlone>());
        async Task<IReadOnlyList<long>> FoundAsync(string? text) => [.. Value(await list.ReadAsync(scene.Wren, text, 1, default)).Lines.Select(line => line.CaseId)];
        Assert.Empty(await FoundAsync(null));
        Value(await alone.RunAsync(scene.Librarian, scene.CaseId, new(new NamedTaxon(Annuum), null, null, "Seen in flower at the counter."), default));
        Value(await alone.RunAsync(scene.Librarian, other, new(new NamedTaxon(Pubescens), null, null, "Purple flowers and dark seeds.", IsSure: true), default));

        Assert.Equal([other, scene.CaseId], await FoundAsync(null));
        Assert.Equal([other], await FoundAsync("SWAP"));
        Assert.Equal([scene.CaseId], await FoundAsync("Capsicum annuum"));
        Assert.Equal([other], await FoundAsync($"#{other}"));
        Assert.Empty(await FoundAsync("swap 100 %"));
        Assert.Equal((1, 2), (Value(await list.ReadAsync(scene.Wren, null, 99, default)).Page, Value(await list.ReadAsync(scene.Wren, null, 99, default)).Total));
        Assert.Equal(PeopleRefusals.VolunteersOnly.Code, (await list.ReadAsync(scene.Owner, null, 1, default)).Refusal?.Code);

        Value(await scene.Library.Act<ReopenCase>().RunAsync(scene.Librarian, other, "The seeds were somebody else's.", default));
        Assert.Equal([scene.CaseId], await FoundAsync(null));
    }

    [Theory, OnBoth]
    public async Task The_count_is_that_of_the_list_and_what_I_said_stands_beside_what_became_of_it(string database)
    {
        await using var scene = await OpenAsync(database);
        var (other, _) = await scene.FileAsync("Chilli from a swap table");
        var (count, given) = (scene.Library.Act<ListReviews>(), scene.Library.Act<ListOwnOpinions>());
        Assert.Equal(2, Value(await count.CountAsync(scene.Wren, default)));
        Assert.Equal(0, Value(await count.CountAsync(Actor.Volunteer(scene.Owner.UserId!.Value), default)));
        Assert.Equal(PeopleRefusals.VolunteersOnly.Code, (await count.CountAsync(scene.Owner, default)).Refusal?.Code);

        await scene.GiveAsync(scene.Wren, Pubescens, other);
        Assert.Equal(1, Value(await count.CountAsync(scene.Wren, default)));
        Assert.Empty(Value(await given.ReadAsync(scene.Wren, default)));

        await scene.GiveAsync(scene.Wren, Annuum);
        await scene.GiveAsync(scene.Tam, Annuum);
        var own = Assert.Single(Value(await given.ReadAsync(scene.Wren, default)));
        Assert.Equal((scene.CaseId, "Capsicum annuum", "Capsicum annuum", true), (own.CaseId, own.Said, own.Became, own.Agrees));
        Assert.Empty(Value(await given.ReadAsync(scene.Ivo, default)));
        Assert.Equal(PeopleRefusals.VolunteersOnly.Code, (await given.ReadAsync(scene.Owner, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task My_own_cases_and_those_I_filed_are_not_mine_to_review(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.FileAsync("My own", row => row.OwnerId = scene.Wren.UserId);
        await scene.FileAsync("At the counter", row => (row.OwnerId, row.FiledForById, row.GuestEmail) = (null, scene.Wren.UserId, "walkin@example.org"));
        await scene.FileAsync("A draft", row => (row.State, row.FiledAt) = (CaseState.Draft, null));
        var view = await ListAsync(scene, scene.Wren);
        Assert.Equal("Pepper in an unmarked pot", Assert.Single(view.Lines).Title);
        Assert.Equal(2, view.Own);
    }

    [Theory, OnBoth]
    public async Task Members_and_visitors_do_not_see_the_list(string database)
    {
        await using var scene = await OpenAsync(database);
        Assert.Equal(PeopleRefusals.MayNotCode, (await scene.Library.Act<ListReviews>().ReadAsync(scene.Owner, default)).Refusal?.Code);
        Assert.Equal(PeopleRefusals.SignInCode, (await scene.Library.Act<ListReviews>().ReadAsync(Actor.Visitor, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_growing_plant_with_ripe_fruit_is_near_the_end_of_its_season_and_a_loose_fruit_is_not(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.FileAsync("Full of fruit", parts: "leaves,flowers,ripe-fruit");
        await scene.FileAsync("A fruit alone", parts: "ripe-fruit,seed");
        var closing = (await ListAsync(scene, scene.Wren)).Lines.Where(line => line.IsSeasonClosing);
        Assert.Equal(["Full of fruit"], closing.Select(line => line.Title));
    }

    private static async Task<QueueView> ListAsync(ReviewScene scene, Actor actor) =>
        Value(await scene.Library.Act<ListReviews>().ReadAsync(actor, default));

    private static IEnumerable<long> Ids(params QueueLine[] lines) => QueueOrder.ByHelp(lines).Select(line => line.CaseId);

    private static QueueLine Line(long id, int waiting = 0, int opinions = 0, bool closing = false) =>
        new(id, "A plant", CaseState.Open, [], [], 1, 0, null, waiting, opinions, opinions + 1, MyPart.NotYet, 0, closing);
}
