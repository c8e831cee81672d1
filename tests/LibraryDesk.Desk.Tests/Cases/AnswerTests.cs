using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.People;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Cases;

public class AnswerTests
{
    private readonly Actor _member = Actor.Member(Guid.NewGuid());

    // Common practice, no source: spots in the flower point to baccatum.
    [Theory, OnBoth]
    public async Task Spots_in_the_flower_raise_baccatum(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var before = await OddsAsync(library, id, "capsicum-baccatum");
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.Of("corolla_spots", "green-yellow"), default);
        Assert.True(await OddsAsync(library, id, "capsicum-baccatum") > before);
    }

    [Theory, OnBoth]
    public async Task Not_sure_and_cannot_see_it_yet_move_nothing(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var before = await OddsAsync(library, id, "capsicum-baccatum");
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.NotSure("corolla_spots"), default);
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.CantSeeYet("corolla_colour"), default);
        Assert.Equal(before, await OddsAsync(library, id, "capsicum-baccatum"));
    }

    [Theory, OnBoth]
    public async Task Taking_an_answer_back_gives_the_odds_of_before_to_the_last_bit(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var before = await OddsAsync(library, id, "capsicum-baccatum");
        var answer = await SavedAsync(library, id, GivenAnswer.Of("corolla_spots", "green-yellow"));
        Assert.Null((await library.Act<TakeBackAnswer>().TakeBackAsync(_member, id, answer.Id, default)).Refusal);
        Assert.Equal(before, await OddsAsync(library, id, "capsicum-baccatum"));
    }

    [Theory, OnBoth]
    public async Task Answering_again_keeps_the_first_answer_on_record(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        await SavedAsync(library, id, GivenAnswer.Of("corolla_spots", "green-yellow"));
        await SavedAsync(library, id, GivenAnswer.Of("corolla_spots", "absent"));
        await using var db = await library.OpenAsync();
        var rows = await db.Set<AnswerRow>().OrderBy(a => a.Id).ToListAsync();
        Assert.Equal([false, true], rows.Select(r => r.TakenBackAt is null));
    }

    [Theory, OnBoth]
    public async Task A_volunteers_score_stands_beside_the_members_answer(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        var volunteer = Actor.Volunteer(Guid.NewGuid());
        var outcome = await library.Act<SaveAnswer>().SaveAsync(volunteer, id, null, GivenAnswer.Of("corolla_spots", "absent"), default);
        Assert.True(outcome.Match(a => a.ByDesk, _ => false));
        await using var db = await library.OpenAsync();
        Assert.Equal(2, await db.Set<AnswerRow>().CountAsync(a => a.TakenBackAt == null));
    }

    [Theory, OnBoth]
    public async Task Another_member_can_neither_answer_nor_take_back(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var answer = await SavedAsync(library, id, GivenAnswer.Of("corolla_spots", "absent"));
        var other = Actor.Member(Guid.NewGuid());
        Assert.Equal(CaseRefusals.NotFoundCode, (await library.Act<SaveAnswer>().SaveAsync(other, id, null, GivenAnswer.NotSure("corolla_spots"), default)).Refusal?.Code);
        Assert.Equal(CaseRefusals.NotFoundCode, (await library.Act<TakeBackAnswer>().TakeBackAsync(other, id, answer.Id, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_volunteer_cannot_take_back_the_members_answer(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        await using var db = await library.OpenAsync();
        var answer = await db.Set<AnswerRow>().FirstAsync(a => a.CaseId == id);
        var outcome = await library.Act<TakeBackAnswer>().TakeBackAsync(Actor.Volunteer(Guid.NewGuid()), id, answer.Id, default);
        Assert.Equal(PeopleRefusals.MayNotCode, outcome.Refusal?.Code);
    }

    [Theory]
    [InlineData("no_such_trait", "absent")]
    [InlineData("corolla_spots", "no such state")]
    [InlineData("corolla_spots", null)]
    public async Task What_the_guide_does_not_know_is_refused_and_nothing_is_kept(string trait, string? state)
    {
        await using var library = await ACase.LibraryAsync("sqlite");
        var id = await ACase.StartAsync(library, _member);
        var outcome = await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.Of(trait, state is null ? [] : [state]), default);
        Assert.Equal(SaveAnswer.AnswerCode, outcome.Refusal?.Code);
        await using var db = await library.OpenAsync();
        Assert.False(await db.Set<AnswerRow>().AnyAsync());
    }

    [Theory]
    [InlineData(-3)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e9)]
    public async Task A_measure_that_cannot_be_is_refused(double low)
    {
        await using var library = await ACase.LibraryAsync("sqlite");
        var id = await ACase.StartAsync(library, _member);
        var outcome = await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.Measured("fruit_length_mm", low), default);
        Assert.Equal(SaveAnswer.AnswerCode, outcome.Refusal?.Code);
    }

    private async Task<AnswerRow> SavedAsync(TestLibrary library, long id, GivenAnswer given) =>
        (await library.Act<SaveAnswer>().SaveAsync(_member, id, null, given, default)).Match(a => a, no => throw new InvalidOperationException(no.Message));

    private async Task<double> OddsAsync(TestLibrary library, long id, string candidate) =>
        (await library.Act<RankCase>().ForAsync(_member, id, default))
            .Match(r => r.Ranking.Candidates.Single(c => c.Id == candidate).Probability, _ => double.NaN);
}
