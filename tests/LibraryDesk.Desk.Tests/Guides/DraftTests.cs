using LibraryDesk.Data.Guides;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.People;
using LibraryDesk.Identification.Editing;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using static LibraryDesk.Desk.Tests.Guides.GuideScene;

namespace LibraryDesk.Desk.Tests.Guides;

public sealed class DraftTests
{
    private static readonly Actor Hester = Actor.Librarian(Guid.NewGuid());
    private static readonly Actor Corin = Actor.Librarian(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task A_change_is_kept_and_can_be_undone_and_put_back(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await BeginAsync(library, Hester);
        Assert.Null((await ChangeAsync(library, Hester, Spots())).Refusal);
        var changed = await DraftAsync(library, Hester);
        Assert.Single(changed.Edits);
        Assert.False(GuideDifference.Between(Shipped, changed.Guide).IsNone);
        Assert.Null((await library.Act<ChangeDraft>().UndoAsync(Hester, Peppers, changed.Revision, default)).Refusal);
        var undone = await DraftAsync(library, Hester);
        Assert.True(GuideDifference.Between(Shipped, undone.Guide).IsNone);
        Assert.Null((await library.Act<ChangeDraft>().PutBackAsync(Hester, Peppers, undone.Revision, default)).Refusal);
        Assert.Single((await DraftAsync(library, Hester)).Edits);
    }

    [Theory, OnBoth]
    public async Task The_slower_of_two_librarians_overwrites_nothing(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var shown = await BeginAsync(library, Hester);
        Assert.Null((await library.Act<ChangeDraft>().RunAsync(Hester, Peppers, shown, Spots(), default)).Refusal);
        var late = await library.Act<ChangeDraft>().RunAsync(Corin, Peppers, shown, new RemoveSource("memory"), default);
        Assert.Equal(GuideRefusals.ChangedMeanwhileCode, late.Refusal?.Code);
        Assert.IsType<PutCell>(Assert.Single((await DraftAsync(library, Corin)).Edits).Edit);
    }

    [Theory, OnBoth]
    public async Task Two_changes_at_the_same_moment_leave_one(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var shown = await BeginAsync(library, Hester);
        var both = await Task.WhenAll(
            library.Act<ChangeDraft>().RunAsync(Hester, Peppers, shown, Spots(), default),
            library.Act<ChangeDraft>().RunAsync(Corin, Peppers, shown, new RemoveTrait("corolla_spots"), default));
        Assert.Single(both, outcome => outcome.IsAllowed);
        Assert.Single((await DraftAsync(library, Hester)).Edits);
    }

    [Theory, OnBoth]
    public async Task A_draft_is_discarded_and_another_begun(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var revision = await BeginAsync(library, Hester);
        Assert.Equal(GuideRefusals.DraftThereCode, (await library.Act<BeginDraft>().RunAsync(Corin, Peppers, null, default)).Refusal?.Code);
        Assert.Null((await library.Act<BeginDraft>().DiscardAsync(Corin, Peppers, revision, default)).Refusal);
        Assert.Equal(GuideRefusals.NoDraftCode, (await library.Act<ReadDraft>().RunAsync(Hester, Peppers, default)).Refusal?.Code);
        await BeginAsync(library, Hester);
    }

    [Theory, OnBoth]
    public async Task Only_librarians_touch_a_draft(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await BeginAsync(library, Hester);
        var wren = Actor.Volunteer(Guid.NewGuid());
        string?[] codes =
        [
            (await library.Act<BeginDraft>().RunAsync(wren, Peppers, null, default)).Refusal?.Code,
            (await library.Act<BeginDraft>().DiscardAsync(wren, Peppers, 1, default)).Refusal?.Code,
            (await library.Act<ReadDraft>().RunAsync(wren, Peppers, default)).Refusal?.Code,
            (await library.Act<ChangeDraft>().RunAsync(wren, Peppers, 1, Spots(), default)).Refusal?.Code,
            (await library.Act<ChangeDraft>().UndoAsync(wren, Peppers, 1, default)).Refusal?.Code,
            (await library.Act<ChangeDraft>().LearnAsync(wren, Peppers, 1, true, default)).Refusal?.Code,
            (await library.Act<RerunCases>().StartAsync(wren, Peppers, default)).Refusal?.Code,
            (await library.Act<PublishGuide>().RunAsync(wren, Peppers, 1, Note, default)).Refusal?.Code,
            (await library.Act<ReadVersions>().OpenAsync(wren, Peppers, ReadVersions.Draft, default)).Refusal?.Code,
            (await library.Act<ReadVersions>().CompareAsync(wren, Peppers, null, ReadVersions.Draft, default)).Refusal?.Code,
        ];
        Assert.All(codes, code => Assert.Equal(PeopleRefusals.MayNotCode, code));
    }

    [Theory, OnBoth]
    public async Task A_fault_is_named_with_its_place_and_stops_the_re_run(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await BeginAsync(library, Hester);
        var cell = Shipped.Cells[0] with { Line = 0 };
        Assert.Null((await ChangeAsync(library, Hester, new PutCell(cell, cell with { Source = "nobody" }))).Refusal);
        var fault = Assert.Single((await DraftAsync(library, Hester)).Faults);
        Assert.Equal((GuidePart.Cell, "0"), (fault.Part, fault.Id));
        Assert.Contains("nobody", fault.Reason, StringComparison.Ordinal);
        Assert.Equal(GuideRefusals.FaultyCode, (await library.Act<RerunCases>().StartAsync(Hester, Peppers, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task What_was_changed_away_is_not_changed_again_in_silence(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await BeginAsync(library, Hester);
        Assert.Null((await ChangeAsync(library, Hester, new RemoveCell(Plain))).Refusal);
        Assert.Equal(GuideRefusals.TargetGoneCode, (await ChangeAsync(library, Corin, new PutCell(Plain, Plain with { Basis = "read again" }))).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_library_with_versions_of_its_own_stays_with_them_when_the_software_brings_a_newer_one(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var own = await PublishedAsync(library, Hester);
        library.Clock.Advance(TimeSpan.FromDays(30));
        await using (var db = await library.OpenAsync())
        {
            var shipped = await db.Set<GuideVersionRow>().SingleAsync(g => g.Version == Shipped.Version);
            db.Add(new GuideVersionRow { GuideId = Peppers, Version = "2099.1", Json = shipped.Json.Replace($"\"{Shipped.Version}\"", "\"2099.1\"", StringComparison.Ordinal), PublishedAt = library.Clock.GetUtcNow() });
            await db.SaveChangesAsync();
        }
        Assert.Equal(own.Version, (await library.Act<GuideShelf>().CurrentAsync(Peppers, default))!.Guide.Version);
        Assert.Null((await library.Act<BeginDraft>().RunAsync(Hester, Peppers, own.Version, default)).Refusal);
        var draft = await DraftAsync(library, Hester);
        Assert.Null((await library.Act<ChangeDraft>().CarryOverAsync(Hester, Peppers, draft.Revision, "2099.1", default)).Refusal);
        Assert.Equal("2099.1.1", (await DraftAsync(library, Hester)).Guide.Version);
    }
}
