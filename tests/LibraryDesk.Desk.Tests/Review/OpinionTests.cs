using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.TestServers;
using static LibraryDesk.Desk.Tests.Review.ReviewScene;

namespace LibraryDesk.Desk.Tests.Review;

public sealed class OpinionTests
{
    [Theory, OnBoth]
    public async Task Two_concordant_opinions_determine_the_case_and_tell_its_owner(string database)
    {
        await using var scene = await OpenAsync(database);
        Assert.IsType<NotYet>(await scene.GiveAsync(scene.Wren, Annuum));
        Assert.IsType<Determined>(await scene.GiveAsync(scene.Tam, Annuum));

        Assert.Equal(CaseState.Determined, (await scene.CaseAsync()).State);
        var determination = Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal((Annuum, "capsicum", (Guid?)null), (determination.Taxon, determination.GuideId, determination.AloneById));
        Assert.Equal(Annuum, OddsThen.FromJson(determination.OddsJson)!.Candidates[0].Id);
        var letter = Assert.Single(await scene.RowsAsync<OutgoingMailRow>());
        Assert.Contains("Capsicum annuum", letter.Body, StringComparison.Ordinal);
        Assert.Contains($"https://desk.example.org/cases/{scene.CaseId}", letter.Body, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_third_person_breaks_the_tie(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.GiveAsync(scene.Wren, Annuum);
        Assert.Equal(3, Assert.IsType<AnotherWanted>(await scene.GiveAsync(scene.Tam, "capsicum-chinense")).Number);
        Assert.Equal(CaseState.Open, (await scene.CaseAsync()).State);
        Assert.IsType<Determined>(await scene.GiveAsync(scene.Ivo, Annuum));
    }

    // Common practice, no source: a plain white corolla points away from pubescens, whose flowers are purple.
    [Theory, OnBoth]
    public async Task Two_who_agree_against_the_odds_get_a_third(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.GiveAsync(scene.Wren, Pubescens);
        Assert.Equal(3, Assert.IsType<AnotherWanted>(await scene.GiveAsync(scene.Tam, Pubescens)).Number);
        Assert.IsType<Determined>(await scene.GiveAsync(scene.Ivo, Pubescens));
        Assert.Contains("under 1 in 20", PeoplesGrounds.Of(Assert.Single(await scene.RowsAsync<DeterminationRow>())), StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task Both_views_are_kept_when_the_review_changes_one(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.SealAsync(scene.Wren, Baccatum);
        await scene.FinishAsync(scene.Wren, Annuum);
        var opinion = Assert.Single(await scene.RowsAsync<OpinionRow>());
        Assert.Equal((Baccatum, Annuum), (opinion.SealedTaxon, opinion.FinalTaxon));
    }

    [Theory, OnBoth]
    public async Task Two_volunteers_sealing_at_the_same_moment_do_not_collide(string database)
    {
        await using var scene = await OpenAsync(database);
        var outcomes = await Task.WhenAll(
            Task.Run(() => scene.SealAsync(scene.Wren, Annuum)),
            Task.Run(() => scene.SealAsync(scene.Tam, Annuum)),
            Task.Run(() => scene.SealAsync(scene.Ivo, Baccatum)));
        Assert.All(outcomes, outcome => Assert.Null(outcome.Refusal));
        Assert.Equal(3, (await scene.RowsAsync<OpinionRow>()).Count);
    }

    [Theory, OnBoth]
    public async Task One_volunteer_sealing_twice_at_the_same_moment_has_one_opinion(string database)
    {
        await using var scene = await OpenAsync(database);
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => scene.SealAsync(scene.Wren, Annuum))));
        Assert.Equal(3, outcomes.Count(outcome => outcome.Refusal?.Code == ReviewRefusals.AlreadySealedCode));
        Assert.Single(await scene.RowsAsync<OpinionRow>());
    }

    [Theory, OnBoth]
    public async Task Two_reviews_finished_at_the_same_moment_determine_once(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.SealAsync(scene.Wren, Annuum);
        await scene.SealAsync(scene.Tam, Annuum);
        var outcomes = await Task.WhenAll(
            Task.Run(() => scene.FinishAsync(scene.Wren, Annuum)),
            Task.Run(() => scene.FinishAsync(scene.Tam, Annuum)));
        Assert.All(outcomes, outcome => Assert.Null(outcome.Refusal));
        Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal(CaseState.Determined, (await scene.CaseAsync()).State);
    }

    [Theory, OnBoth]
    public async Task An_older_review_form_is_refused(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.SealAsync(scene.Wren, Annuum);
        var shown = (await scene.ReadAsync(scene.Wren)).Mine!.Revision;
        await scene.FinishAsync(scene.Wren, Baccatum);
        var outcome = await scene.Library.Act<FinishOpinion>().RunAsync(scene.Wren, scene.CaseId, shown, new NamedTaxon(Annuum), null, default);
        Assert.Equal(ReviewRefusals.ChangedMeanwhileCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task The_owner_a_member_and_a_visitor_give_no_opinion(string database)
    {
        await using var scene = await OpenAsync(database);
        var ownAsVolunteer = Actor.Volunteer(scene.Owner.UserId!.Value);
        Assert.Equal(ReviewRefusals.OwnCaseCode, (await scene.SealAsync(ownAsVolunteer, Annuum)).Refusal?.Code);
        Assert.Equal(PeopleRefusals.MayNotCode, (await scene.SealAsync(Actor.Member(Guid.NewGuid()), Annuum)).Refusal?.Code);
        Assert.Equal(PeopleRefusals.SignInCode, (await scene.SealAsync(Actor.Visitor, Annuum)).Refusal?.Code);
        Assert.Empty(await scene.RowsAsync<OpinionRow>());
    }

    [Theory, OnBoth]
    public async Task Nonsense_is_refused_and_leaves_nothing(string database)
    {
        await using var scene = await OpenAsync(database);
        Assert.Equal(ReviewRefusals.UnknownTaxonCode, await RefusalAsync(new OpinionWritten(new NamedTaxon("capsicum-inventum"), null, null)));
        Assert.Equal(ReviewRefusals.UnknownQualifierCode, await RefusalAsync(new OpinionWritten(new NamedTaxon(Annuum, "ssp."), null, null)));
        Assert.Equal(ReviewRefusals.OddsRangeCode, await RefusalAsync(new OpinionWritten(new NamedTaxon(Annuum), 21, null)));
        Assert.Equal(ReviewRefusals.NoteTooLongCode, await RefusalAsync(new OpinionWritten(new NamedTaxon(Annuum), null, new string('a', 2001))));
        Assert.Equal(ReviewRefusals.SealFirstCode, (await scene.Library.Act<FinishOpinion>().RunAsync(scene.Wren, scene.CaseId, 1, new NamedTaxon(Annuum), null, default)).Refusal?.Code);
        Assert.Equal(CaseRefusals.NotFoundCode, (await scene.SealAsync(scene.Wren, Annuum, 999_999)).Refusal?.Code);
        Assert.Empty(await scene.RowsAsync<OpinionRow>());
        Assert.Empty(await scene.RowsAsync<CaseEventRow>());

        async Task<string?> RefusalAsync(OpinionWritten written) =>
            (await scene.Library.Act<SealOpinion>().RunAsync(scene.Wren, scene.CaseId, written, default)).Refusal?.Code;
    }

    [Theory, OnBoth]
    public async Task A_determined_case_takes_no_more_opinions(string database)
    {
        await using var scene = await OpenAsync(database, opinionsNeeded: 1);
        await scene.GiveAsync(scene.Wren, Annuum);
        Assert.Equal(ReviewRefusals.NotOpenCode, (await scene.SealAsync(scene.Tam, Annuum)).Refusal?.Code);
    }
}
