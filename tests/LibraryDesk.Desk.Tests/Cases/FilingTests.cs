using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Cases;

public class FilingTests
{
    private readonly Actor _member = Actor.Member(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task A_case_with_nothing_to_see_is_not_filed(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.NotSure("corolla_spots"), default);
        Assert.Equal("case.nothing-to-see", (await library.Act<FileCase>().FileAsync(_member, id, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_drafts_name_and_crop_change_until_something_is_answered(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var rename = library.Act<RenameCase>();
        var id = await ACase.StartAsync(library, _member);
        await library.Act<SetParts>().SetAsync(_member, id, null, ["leaves", "flowers"], default);
        Assert.Equal("case.title", (await rename.RunAsync(_member, id, "  ", null, default)).Refusal?.Code);
        Assert.Equal(CaseRefusals.NotFoundCode, (await rename.RunAsync(Actor.Member(Guid.NewGuid()), id, "Mine now", null, default)).Refusal?.Code);

        var moved = (await rename.RunAsync(_member, id, "Bean on the fence", "phaseolus", default)).Allowed();
        Assert.Equal(("Bean on the fence", "phaseolus"), (moved.Title, moved.GuideId));
        await using (var db = await library.OpenAsync()) Assert.Equal("", (await db.Set<LookRow>().SingleAsync()).Parts);

        (await rename.RunAsync(_member, id, "Pepper again", "capsicum", default)).Allowed();
        await library.Act<SetParts>().SetAsync(_member, id, null, ["flowers"], default);
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.Of("corolla_spots", "green-yellow"), default);
        Assert.Equal(RenameCase.CropCode, (await rename.RunAsync(_member, id, "Bean", "phaseolus", default)).Refusal?.Code);
        Assert.Equal("Pepper, a red one", (await rename.RunAsync(_member, id, " Pepper, a red one ", "capsicum", default)).Allowed().Title);
    }

    [Theory, OnBoth]
    public async Task Filing_twice_is_filing_once(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        Assert.Null((await library.Act<FileCase>().FileAsync(_member, id, default)).Refusal);
        await using var db = await library.OpenAsync();
        Assert.Equal(1, await db.Set<CaseEventRow>().CountAsync(e => e.Kind == CaseEvents.Filed));
    }

    [Theory, OnBoth]
    public async Task A_volunteer_sees_the_odds_only_after_the_seal(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        var volunteer = Actor.Volunteer(Guid.NewGuid());
        Assert.Equal(CaseRefusals.SealFirstCode, (await library.Act<RankCase>().ForAsync(volunteer, id, default)).Refusal?.Code);
        await using var db = await library.OpenAsync();
        db.Add(new OpinionRow { CaseId = id, Round = 1, VolunteerId = volunteer.UserId!.Value, SealedTaxon = "capsicum-baccatum" });
        await db.SaveChangesAsync();
        Assert.Null((await library.Act<RankCase>().ForAsync(volunteer, id, default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task An_asked_for_answer_sends_the_case_back_to_the_queue(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        await using (var db = await library.OpenAsync())
        {
            (await db.Set<CaseRow>().SingleAsync(c => c.Id == id)).State = CaseState.WaitingForLook;
            db.Add(new LookRequestRow { CaseId = id, ById = Guid.NewGuid(), TraitId = "anther_colour", Message = "Please look." });
            await db.SaveChangesAsync();
        }
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.Of("corolla_spots", "absent"), default);
        Assert.Equal(CaseState.WaitingForLook, await StateAsync(library, id));
        await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.Of("anther_colour", "yellow"), default);
        Assert.Equal(CaseState.Open, await StateAsync(library, id));
    }

    [Theory, OnBoth]
    public async Task Looks_are_numbered_and_keep_the_parts_of_the_last(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        var look = (await library.Act<AddLook>().AddAsync(_member, id, null, "It flowers.", default)).Match(l => l, _ => null!);
        Assert.Equal((2, "leaves,flowers", new DateOnly(2026, 8, 1)), (look.Number, look.Parts, look.Date));
    }

    [Theory, OnBoth]
    public async Task A_look_in_days_to_come_or_long_ago_is_refused(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        Assert.Equal("case.date", (await library.Act<AddLook>().AddAsync(_member, id, new DateOnly(2026, 8, 3), null, default)).Refusal?.Code);
        Assert.Equal("case.date", (await library.Act<AddLook>().AddAsync(_member, id, new DateOnly(1900, 1, 1), null, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_withdrawn_case_cannot_be_changed(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        Assert.Null((await library.Act<WithdrawCase>().WithdrawAsync(_member, id, default)).Refusal);
        var answer = await library.Act<SaveAnswer>().SaveAsync(_member, id, null, GivenAnswer.NotSure("corolla_spots"), default);
        Assert.Equal(CaseRefusals.FinishedCode, answer.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Followers_hear_of_their_case_only(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.FiledAsync(library, _member);
        var (heard, other) = (0, 0);
        using (library.Act<CaseFeed>().Follow(id, () => heard++))
        using (library.Act<CaseFeed>().Follow(id + 1, () => other++))
        {
            await library.Act<AddLook>().AddAsync(_member, id, null, null, default);
        }
        await library.Act<AddLook>().AddAsync(_member, id, null, null, default);
        Assert.Equal((1, 0), (heard, other));
    }

    private static async Task<CaseState> StateAsync(TestLibrary library, long id)
    {
        await using var db = await library.OpenAsync();
        return (await db.Set<CaseRow>().SingleAsync(c => c.Id == id)).State;
    }
}
