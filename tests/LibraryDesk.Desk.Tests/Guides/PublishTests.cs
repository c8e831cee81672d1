using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Guides;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Identification.Learning;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using static LibraryDesk.Desk.Tests.Guides.GuideScene;

namespace LibraryDesk.Desk.Tests.Guides;

public sealed class PublishTests
{
    [Theory, OnBoth]
    public async Task New_cases_take_the_new_version_and_old_ones_keep_theirs(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var published = await PublishedAsync(scene.Library, scene.Librarian);
        Assert.Equal(Shipped.Version + ".1", published.Version);
        Assert.Equal(Shipped.Version, (await CaseAsync(scene.Library, scene.CaseId)).GuideVersion);
        Assert.Equal(published.Version, (await scene.Library.Act<GuideShelf>().CurrentAsync(Peppers, default))!.Guide.Version);
        var determination = Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal(Shipped.Version, determination.GuideVersion);
    }

    [Theory, OnBoth]
    public async Task Determined_cases_are_ranked_before_and_after(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        await BeginAsync(scene.Library, scene.Librarian);
        Assert.Null((await ChangeAsync(scene.Library, scene.Librarian, Spots())).Refusal);
        var line = Assert.Single((await RerunAsync(scene.Library, scene.Librarian)).Result!.Lines);
        Assert.True(line.IsProof);
        Assert.True(line.After.Truth < line.Before.Truth, "petals without spots now speak less for it");
    }

    [Theory, OnBoth]
    public async Task Counts_of_determined_plants_stand_apart_and_no_plant_judges_itself(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var revision = await BeginAsync(scene.Library, scene.Librarian);
        Assert.Null((await scene.Library.Act<ChangeDraft>().LearnAsync(scene.Librarian, Peppers, revision, true, default)).Refusal);
        var rerun = await RerunAsync(scene.Library, scene.Librarian);
        Assert.Equal(1, rerun.Result!.Learned);
        var only = Assert.Single(rerun.Result.Lines);
        // One plant in all: ranked without its own counts, nothing is left to learn from.
        Assert.Equal(only.Before.Truth, only.After.Truth, 12);
        var published = Value(await scene.Library.Act<PublishGuide>().RunAsync(scene.Librarian, Peppers, rerun.Id, Note, default));
        var guide = (await scene.Library.Act<GuideShelf>().FindAsync(Peppers, published.Version, default)).Match(g => g.Guide, _ => null!);
        Assert.Equal(Shipped.Cells.Count, guide.Cells.Count);
        Assert.All(guide.Counts, c => Assert.StartsWith(ReviewScene.Annuum, c.Of, StringComparison.Ordinal));
        Assert.InRange(guide.Counts.Where(c => c.Trait == "corolla_spots" && c.From == DeterminedCounts.From).Sum(c => c.Count), 0.95, 1.001);
    }

    [Theory, OnBoth]
    public async Task How_answers_turned_out_is_shown_on_the_draft_and_used_only_when_published(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var read = scene.Library.Act<ReadReliability>();
        Assert.Equal(GuideRefusals.NoDraftCode, (await read.RunAsync(scene.Librarian, Peppers, default)).Refusal?.Code);
        var revision = await BeginAsync(scene.Library, scene.Librarian);
        Assert.Equal(PeopleRefusals.MayNotCode, (await read.RunAsync(scene.Owner, Peppers, default)).Refusal?.Code);
        var shown = Value(await read.RunAsync(scene.Librarian, Peppers, default));
        Assert.Contains(shown, line => line is { Trait: "corolla_spots", Count: 1 });

        Assert.Null((await scene.Library.Act<ChangeDraft>().LearnAsync(scene.Librarian, Peppers, revision, true, default)).Refusal);
        var published = await PublishAsync(scene.Library, scene.Librarian);
        var shelf = scene.Library.Act<GuideShelf>();
        var guide = (await shelf.FindAsync(Peppers, published.Version, default)).Match(g => g, _ => null!);
        foreach (var line in shown) Assert.Equal(line.Learned, guide.ReliabilityOf(line.Trait)!.At(line.Sure), 6);
        var before = (await shelf.FindAsync(Peppers, Shipped.Version, default)).Match(g => g, _ => null!);
        foreach (var line in shown) Assert.Equal(line.Stated, before.ReliabilityOf(line.Trait)!.At(line.Sure), 12);
    }

    [Theory, OnBoth]
    public async Task It_is_refused_without_a_re_run_that_still_holds(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await BeginAsync(scene.Library, scene.Librarian);
        Assert.Null((await ChangeAsync(scene.Library, scene.Librarian, Spots())).Refusal);
        var publish = scene.Library.Act<PublishGuide>();
        Assert.Equal(GuideRefusals.RerunFirstCode, (await publish.RunAsync(scene.Librarian, Peppers, 1, Note, default)).Refusal?.Code);
        var rerun = await RerunAsync(scene.Library, scene.Librarian);
        Assert.Equal(GuideRefusals.NoteMissingCode, (await publish.RunAsync(scene.Librarian, Peppers, rerun.Id, "short", default)).Refusal?.Code);
        // A case is determined between the re-run and the publishing.
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        Assert.Equal(GuideRefusals.RerunFirstCode, (await publish.RunAsync(scene.Librarian, Peppers, rerun.Id, Note, default)).Refusal?.Code);
        Assert.Null((await publish.RunAsync(scene.Librarian, Peppers, (await RerunAsync(scene.Library, scene.Librarian)).Id, Note, default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task A_draft_without_a_change_is_not_published(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await BeginAsync(scene.Library, scene.Librarian);
        var rerun = await RerunAsync(scene.Library, scene.Librarian);
        var outcome = await scene.Library.Act<PublishGuide>().RunAsync(scene.Librarian, Peppers, rerun.Id, Note, default);
        Assert.Equal(GuideRefusals.NothingChangedCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_re_run_that_a_restart_cut_off_says_so_and_can_be_run_again(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await BeginAsync(scene.Library, scene.Librarian);
        var done = await RerunAsync(scene.Library, scene.Librarian);
        await using (var db = await scene.Library.OpenAsync())
        {
            await db.Set<GuideRerunRow>().ExecuteUpdateAsync(r => r.SetProperty(x => x.FinishedAt, (DateTimeOffset?)null).SetProperty(x => x.ResultJson, (string?)null));
        }
        scene.Library.Clock.Advance(TimeSpan.FromHours(1));
        Assert.True(Value(await scene.Library.Act<RerunCases>().ReadAsync(scene.Librarian, Peppers, default)).IsStopped);
        var again = await RerunAsync(scene.Library, scene.Librarian);
        Assert.NotEqual(done.Id, again.Id);
        Assert.NotNull(again.Result);
    }

    [Theory, OnBoth]
    public async Task An_open_case_moves_to_the_newer_version_and_a_determined_one_does_not(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var move = scene.Library.Act<MoveCase>();
        Assert.Null((await scene.SealAsync(scene.Wren, ReviewScene.Annuum)).Refusal);
        Assert.Equal(GuideRefusals.NotNewerCode, (await move.RunAsync(scene.Wren, scene.CaseId, default)).Refusal?.Code);
        var published = await PublishedAsync(scene.Library, scene.Librarian);
        var shown = Value(await move.PreviewAsync(scene.Wren, scene.CaseId, default));
        Assert.NotEqual(Odds(shown.Before), Odds(shown.After));
        Assert.Null((await move.RunAsync(scene.Wren, scene.CaseId, default)).Refusal);
        Assert.Equal(published.Version, (await CaseAsync(scene.Library, scene.CaseId)).GuideVersion);
        Assert.Single(await scene.RowsAsync<CaseEventRow>(), e => e.Kind == MoveCase.Moved);

        await scene.FinishAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        Assert.Equal(GuideRefusals.NotOpenCode, (await move.RunAsync(scene.Wren, scene.CaseId, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Whoever_could_still_give_an_unseen_opinion_sees_no_odds_by_moving_a_case(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await PublishedAsync(scene.Library, scene.Librarian);
        var move = scene.Library.Act<MoveCase>();
        Assert.Equal(LibraryDesk.Desk.Cases.CaseRefusals.SealFirstCode, (await move.PreviewAsync(scene.Wren, scene.CaseId, default)).Refusal?.Code);
        Assert.Equal(PeopleRefusals.MayNotCode, (await move.PreviewAsync(scene.Owner, scene.CaseId, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_version_that_is_gone_is_said_plainly_and_the_lists_stay(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await using (var db = await scene.Library.OpenAsync())
        {
            await db.Set<CaseRow>().Where(c => c.Id == scene.CaseId).ExecuteUpdateAsync(c => c.SetProperty(x => x.GuideVersion, "1999.9"));
        }
        Assert.Equal(GuideRefusals.VersionGoneCode, (await scene.Library.Act<ReadCase>().ReadAsync(scene.Owner, scene.CaseId, default)).Refusal?.Code);
        Assert.Equal(GuideRefusals.VersionGoneCode, (await scene.SealAsync(scene.Wren, ReviewScene.Annuum)).Refusal?.Code);
        Assert.Equal(GuideRefusals.VersionGoneCode, (await scene.Library.Act<ReadReview>().RunAsync(scene.Wren, scene.CaseId, default)).Refusal?.Code);
        Assert.Null(Assert.Single(await scene.Library.Act<ListCases>().OwnAsync(scene.Owner, default)).Ranking);
        Assert.Single(Value(await scene.Library.Act<ListReviews>().ReadAsync(scene.Wren, default)).Lines);
    }

    private static double Odds(CaseRanking ranking) => ranking.Ranking.Candidates.First(c => c.Id == ReviewScene.Annuum).Probability;
}
