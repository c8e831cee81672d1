using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.TestServers;
using static LibraryDesk.Desk.Tests.Review.ReviewScene;

namespace LibraryDesk.Desk.Tests.Review;

/// <summary>What stays covered until the own opinion is sealed.</summary>
public sealed class CoverTests
{
    [Theory, OnBoth]
    public async Task Before_my_seal_nothing_of_the_odds_suggestions_or_opinions_is_read(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.GiveAsync(scene.Tam, Annuum);
        await SuggestAsync(scene);
        var view = await scene.ReadAsync(scene.Wren);
        Assert.Null(view.Open);
        Assert.Null(view.Mine);
        Assert.Equal(1, view.Opinions);
    }

    [Theory, OnBoth]
    public async Task My_seal_opens_the_odds_and_suggestions_but_not_yet_the_opinions(string database)
    {
        await using var scene = await OpenAsync(database);
        await SuggestAsync(scene);
        await scene.SealAsync(scene.Wren, Annuum);
        var open = (await scene.ReadAsync(scene.Wren)).Open!;
        Assert.Equal(Annuum, open.Read.Ranking.Candidates[0].Id);
        Assert.Single(open.Suggestions);
        Assert.Null(open.Others);
    }

    [Theory, OnBoth]
    public async Task The_second_seal_opens_both_opinions_to_both(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.SealAsync(scene.Wren, Annuum);
        await scene.SealAsync(scene.Tam, Baccatum);
        Assert.Equal(Baccatum, Assert.Single((await scene.ReadAsync(scene.Wren)).Open!.Others!).Sealed.Taxon);
        Assert.Equal(Annuum, Assert.Single((await scene.ReadAsync(scene.Tam)).Open!.Others!).Sealed.Taxon);
        Assert.Null((await scene.ReadAsync(scene.Ivo)).Open);
    }

    [Theory, OnBoth]
    public async Task Another_volunteers_scores_stay_covered_too(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.Library.Act<ScoreTrait>().RunAsync(scene.Tam, scene.CaseId, scene.LookId, GivenAnswer.Of("anther_colour", "yellow"), default);
        Assert.DoesNotContain((await scene.ReadAsync(scene.Wren)).Answers, a => a.By == Scorer.AnotherVolunteer);
        await scene.SealAsync(scene.Wren, Annuum);
        Assert.Contains((await scene.ReadAsync(scene.Wren)).Answers, a => a.By == Scorer.AnotherVolunteer && a.Row.States == "yellow");
    }

    [Theory, OnBoth]
    public async Task A_score_is_kept_beside_the_members_and_a_later_one_replaces_it(string database)
    {
        await using var scene = await OpenAsync(database);
        var score = scene.Library.Act<ScoreTrait>();
        await score.RunAsync(scene.Wren, scene.CaseId, scene.LookId, GivenAnswer.Of("corolla_spots", "green-yellow"), default);
        await score.RunAsync(scene.Wren, scene.CaseId, scene.LookId, GivenAnswer.Of("corolla_spots", "green"), default);
        var standing = (await scene.ReadAsync(scene.Wren)).Answers.Where(a => a.Row.TraitId == "corolla_spots").ToList();
        Assert.Equal(["absent", "green"], standing.Select(a => a.Row.States).Order(StringComparer.Ordinal));
        Assert.Equal(1, (await scene.RowsAsync<AnswerRow>()).Count(a => a.TakenBackAt != null));
    }

    // Common practice, no source: spots in the corolla point to baccatum.
    [Theory, OnBoth]
    public async Task A_contested_score_is_a_second_answer_and_the_odds_move(string database)
    {
        await using var scene = await OpenAsync(database);
        var contest = scene.Library.Act<ContestAnswer>();
        var member = (await scene.RowsAsync<AnswerRow>()).Single(a => a.TraitId == "corolla_spots");
        var score = GivenAnswer.Of("corolla_spots", "green-yellow");
        Assert.Equal(ReviewRefusals.SealFirstCode, (await contest.RunAsync(scene.Wren, scene.CaseId, member.Id, score, default)).Refusal?.Code);

        await scene.SealAsync(scene.Wren, Baccatum);
        var before = await OddsAsync(scene);
        var written = Value(await contest.RunAsync(scene.Wren, scene.CaseId, member.Id, score, default));
        Assert.Equal(member.Id, written.ContestsAnswerId);
        Assert.True(await OddsAsync(scene) > before);
        Assert.Equal(ReviewRefusals.OwnAnswerCode, (await contest.RunAsync(scene.Wren, scene.CaseId, written.Id, score, default)).Refusal?.Code);

        static async Task<double> OddsAsync(ReviewScene scene) =>
            (await scene.ReadAsync(scene.Wren)).Open!.Read.Ranking.Candidates.Single(c => c.Id == Baccatum).Probability;
    }

    [Theory, OnBoth]
    public async Task A_score_that_makes_no_sense_is_refused(string database)
    {
        await using var scene = await OpenAsync(database);
        var score = scene.Library.Act<ScoreTrait>();
        Assert.Equal(SaveAnswer.AnswerCode, await RefusalAsync(GivenAnswer.Of("corolla_spots", "tartan")));
        Assert.Equal(SaveAnswer.AnswerCode, await RefusalAsync(GivenAnswer.Of("no_such_trait", "absent")));
        Assert.Equal(SaveAnswer.AnswerCode, await RefusalAsync(GivenAnswer.Measured("fruit_length_mm", -4)));

        async Task<string?> RefusalAsync(GivenAnswer given) =>
            (await score.RunAsync(scene.Wren, scene.CaseId, scene.LookId, given, default)).Refusal?.Code;
    }

    [Theory, OnBoth]
    public async Task The_owner_reads_opinions_together_and_volunteers_as_on_the_review_desk(string database)
    {
        await using var scene = await OpenAsync(database);
        await SuggestAsync(scene);
        await scene.SealAsync(scene.Wren, Annuum);
        var first = await OutcomeAsync(scene, scene.Owner);
        Assert.Equal((1, true, true), (first.Sealed, first.Opinions is null, first.Suggestions is not null));

        await scene.SealAsync(scene.Tam, Annuum);
        Assert.Equal(2, (await OutcomeAsync(scene, scene.Owner)).Opinions?.Count);
        Assert.Equal(2, (await OutcomeAsync(scene, scene.Wren)).Opinions?.Count);
        var covered = await OutcomeAsync(scene, scene.Ivo);
        Assert.Equal((true, true), (covered.Opinions is null, covered.Suggestions is null));
    }

    [Theory, OnBoth]
    public async Task What_became_of_a_case_is_not_a_strangers_to_read(string database)
    {
        await using var scene = await OpenAsync(database);
        var outcome = await scene.Library.Act<ReadOutcome>().RunAsync(Actor.Member(Guid.NewGuid()), scene.CaseId, default);
        Assert.Equal(CaseRefusals.NotFoundCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_suggestion_needs_a_reason_and_only_its_giver_withdraws_it(string database)
    {
        await using var scene = await OpenAsync(database);
        var add = scene.Library.Act<AddSuggestion>();
        Assert.Equal(ReviewRefusals.ReasonMissingCode, (await add.RunAsync(scene.Owner, scene.CaseId, new SuggestionWritten(Annuum, null, null, "no"), default)).Refusal?.Code);
        var row = await SuggestAsync(scene);
        var withdraw = scene.Library.Act<WithdrawSuggestion>();
        Assert.Equal(ReviewRefusals.NoSuchSuggestionCode, (await withdraw.RunAsync(scene.Wren, scene.CaseId, row.Id, default)).Refusal?.Code);
        Assert.Null((await withdraw.RunAsync(scene.Owner, scene.CaseId, row.Id, default)).Refusal);
    }

    private static async Task<OutcomeView> OutcomeAsync(ReviewScene scene, Actor actor) =>
        Value(await scene.Library.Act<ReadOutcome>().RunAsync(actor, scene.CaseId, default));

    private static async Task<SuggestionRow> SuggestAsync(ReviewScene scene) => Value(await scene.Library.Act<AddSuggestion>().RunAsync(
        scene.Owner, scene.CaseId, new SuggestionWritten(Annuum, null, "Harrow Red", "My aunt grew one like it."), default));
}
