using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Guides;
using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.People;
using LibraryDesk.Identification.Guides;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Cases;

public class StartCaseTests
{
    [Theory, OnBoth]
    public async Task A_member_begins_a_draft_with_a_first_look(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, Actor.Member(Guid.NewGuid()));
        await using var db = await library.OpenAsync();
        Assert.Equal(CaseState.Draft, (await db.Set<CaseRow>().SingleAsync(c => c.Id == id)).State);
        Assert.Equal(1, (await db.Set<LookRow>().SingleAsync(l => l.CaseId == id)).Number);
    }

    [Theory, OnBoth]
    public async Task The_guide_it_is_judged_by_is_kept_byte_for_byte(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ACase.StartAsync(library, Actor.Member(Guid.NewGuid()));
        await using var db = await library.OpenAsync();
        var kept = await db.Set<GuideVersionRow>().SingleAsync(g => g.GuideId == "capsicum");
        Assert.Equal(BuiltInGuides.Text("capsicum"), System.Text.Encoding.UTF8.GetBytes(kept.Json));
    }

    [Theory, OnBoth]
    public async Task A_guest_gets_a_link_by_letter_and_only_its_hash_is_kept(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var outcome = await library.Act<StartCase>().StartAsync(Actor.Visitor, ACase.Pepper with { GuestEmail = "mo@example.org" }, default);
        var key = outcome.Match(started => started.GuestKey, _ => null);
        await using var db = await library.OpenAsync();
        Assert.Contains($"http://desk.test/c/{key}", (await db.Set<OutgoingMailRow>().SingleAsync()).Body, StringComparison.Ordinal);
        Assert.NotEqual(key, (await db.Set<CaseRow>().SingleAsync()).GuestKeyHash);
        Assert.Null((await library.Act<SetParts>().SetAsync(Actor.Guest(key!), outcome.Match(s => s.CaseIds[0], _ => 0), null, ["leaves"], default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task A_tray_becomes_one_case_for_each_plant(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ACase.StartAsync(library, Actor.Member(Guid.NewGuid()), ACase.Pepper with { Specimen = Specimen.Seedling, Plants = 5 });
        await using var db = await library.OpenAsync();
        var rows = await db.Set<CaseRow>().ToListAsync();
        Assert.Equal(5, rows.Count);
        Assert.Single(rows.Select(r => r.BatchId).Distinct());
        Assert.NotNull(rows[0].BatchId);
    }

    [Theory, OnBoth]
    public async Task A_volunteer_files_for_a_walk_in_who_then_owns_it_by_the_link(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var volunteer = Actor.Volunteer(Guid.NewGuid());
        await ACase.StartAsync(library, volunteer, ACase.Pepper with { ForWalkIn = true });
        await using var db = await library.OpenAsync();
        var row = await db.Set<CaseRow>().SingleAsync();
        Assert.Null(row.OwnerId);
        Assert.Equal(volunteer.UserId, row.FiledForById);
        Assert.NotNull(row.GuestKeyHash);
    }

    [Theory]
    [InlineData("", "mo@example.org", 1, "case.title")]
    [InlineData("Pepper", null, 1, "case.email")]
    [InlineData("Pepper", "not an address", 1, "case.email")]
    [InlineData("Pepper", "mo@example.org", 0, "case.plants")]
    [InlineData("Pepper", "mo@example.org", 61, "case.plants")]
    [InlineData("Pepper", "mo@example.org", 2, "case.plants")]
    public async Task What_cannot_be_begun_is_refused(string title, string? email, int plants, string code)
    {
        await using var library = await ACase.LibraryAsync("sqlite");
        var outcome = await library.Act<StartCase>().StartAsync(
            Actor.Visitor, ACase.Pepper with { Title = title, GuestEmail = email, Plants = plants }, default);
        Assert.Equal(code, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_crop_without_a_guide_is_refused(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var outcome = await library.Act<StartCase>().StartAsync(Actor.Member(Guid.NewGuid()), ACase.Pepper with { GuideId = "nothing" }, default);
        Assert.Equal("case.crop", outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_member_may_not_file_for_a_walk_in(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var outcome = await library.Act<StartCase>().StartAsync(Actor.Member(Guid.NewGuid()), ACase.Pepper with { ForWalkIn = true }, default);
        Assert.Equal(PeopleRefusals.MayNotCode, outcome.Refusal?.Code);
    }
}
