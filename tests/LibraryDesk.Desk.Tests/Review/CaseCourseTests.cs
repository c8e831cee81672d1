using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.Lineage;
using LibraryDesk.TestServers;
using static LibraryDesk.Desk.Tests.Review.ReviewScene;

namespace LibraryDesk.Desk.Tests.Review;

/// <summary>Asking for looks, determining alone, opening again, closing.</summary>
public sealed class CaseCourseTests
{
    private const string Grounds = "Spots, long calyx teeth and yellow anthers, seen on the plant at the counter.";

    [Theory, OnBoth]
    public async Task Asking_for_a_look_makes_the_case_wait_and_writes_to_the_owner(string database)
    {
        await using var scene = await OpenAsync(database);
        var request = Value(await AskAsync(scene, new LookWanted("anther_colour", null, null)));
        Assert.Equal("flowers", request.PartId);
        Assert.Equal(CaseState.WaitingForLook, (await scene.CaseAsync()).State);
        Assert.Contains(request.Message, Assert.Single(await scene.RowsAsync<OutgoingMailRow>()).Body, StringComparison.Ordinal);
        Assert.Null((await scene.SealAsync(scene.Tam, Annuum)).Refusal);
    }

    [Theory, OnBoth]
    public async Task Withdrawing_the_last_request_opens_the_case_again(string database)
    {
        await using var scene = await OpenAsync(database);
        var first = Value(await AskAsync(scene, new LookWanted("anther_colour", null, null)));
        var second = Value(await AskAsync(scene, new LookWanted(null, "ripe-fruit", null)));
        var withdraw = scene.Library.Act<WithdrawLookRequest>();
        Assert.Equal(PeopleRefusals.MayNotCode, (await withdraw.RunAsync(scene.Tam, scene.CaseId, first.Id, default)).Refusal?.Code);
        await withdraw.RunAsync(scene.Wren, scene.CaseId, first.Id, default);
        Assert.Equal(CaseState.WaitingForLook, (await scene.CaseAsync()).State);
        await withdraw.RunAsync(scene.Librarian, scene.CaseId, second.Id, default);
        Assert.Equal(CaseState.Open, (await scene.CaseAsync()).State);
        Assert.Equal(ReviewRefusals.NoSuchRequestCode, (await withdraw.RunAsync(scene.Wren, scene.CaseId, first.Id, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task The_answer_that_was_asked_for_opens_the_case_again(string database)
    {
        await using var scene = await OpenAsync(database);
        await AskAsync(scene, new LookWanted("anther_colour", null, null));
        var answer = scene.Library.Act<SaveAnswer>();
        await answer.SaveAsync(scene.Owner, scene.CaseId, scene.LookId, GivenAnswer.Of("corolla_colour", "white"), default);
        await answer.SaveAsync(scene.Owner, scene.CaseId, scene.LookId, GivenAnswer.CantSeeYet("anther_colour"), default);
        await answer.SaveAsync(scene.Tam, scene.CaseId, scene.LookId, GivenAnswer.Of("anther_colour", "yellow"), default);
        Assert.Equal(CaseState.WaitingForLook, (await scene.CaseAsync()).State);
        await answer.SaveAsync(scene.Owner, scene.CaseId, scene.LookId, GivenAnswer.Of("anther_colour", "yellow"), default);
        Assert.Equal(CaseState.Open, (await scene.CaseAsync()).State);
    }

    [Theory, OnBoth]
    public async Task Taste_is_never_asked_for_and_neither_is_nothing(string database)
    {
        await using var scene = await OpenAsync(database);
        Assert.Equal(ReviewRefusals.NeverAskedCode, (await AskAsync(scene, new LookWanted("pungency", null, "Hot?"))).Refusal?.Code);
        Assert.Equal(ReviewRefusals.NothingAskedCode, (await AskAsync(scene, new LookWanted(null, null, "  "))).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_librarian_determines_alone_with_stated_grounds(string database)
    {
        await using var scene = await OpenAsync(database);
        var alone = scene.Library.Act<DetermineAlone>();
        var asked = new DeterminationAlone(new NamedTaxon(Baccatum, Qualifiers.Cf), null, null, Grounds);
        Assert.Equal(PeopleRefusals.MayNotCode, (await alone.RunAsync(scene.Wren, scene.CaseId, asked, default)).Refusal?.Code);
        Assert.Equal(ReviewRefusals.GroundsMissingCode, (await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { Grounds = "Because." }, default)).Refusal?.Code);
        Assert.Equal(DeterminationRules.NeedsOriginCode, (await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { VarietyName = "Harrow Red" }, default)).Refusal?.Code);
        Assert.Equal(DeterminationRules.NotFromCaseCode, (await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { VarietyName = "Harrow Red", PacketCode = "Q26-0418-H" }, default)).Refusal?.Code);
        Assert.Equal(DeterminationRules.NotFromCaseCode, (await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { PacketCode = "Q26-0418-H" }, default)).Refusal?.Code);
        var against = (await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { Taxon = new NamedTaxon(Pubescens) }, default)).Refusal;
        Assert.Equal((ReviewRefusals.AgainstTheTraitsCode, true), (against?.Code, against?.MayInsist));
        Assert.Equal(CaseState.Open, (await scene.CaseAsync()).State);

        Assert.Null((await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { IsSure = true }, default)).Refusal);
        var row = Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal((Baccatum, "cf.", scene.Librarian.UserId), (row.Taxon, row.Qualifier, row.AloneById));
    }

    [Theory, OnBoth]
    public async Task An_opened_case_keeps_its_earlier_determination_and_starts_a_new_round(string database)
    {
        await using var scene = await OpenAsync(database);
        await scene.GiveAsync(scene.Wren, Annuum);
        await scene.GiveAsync(scene.Tam, Annuum);
        var reopen = scene.Library.Act<ReopenCase>();
        Assert.Equal(ReviewRefusals.ReasonMissingCode, (await reopen.RunAsync(scene.Owner, scene.CaseId, "hm", default)).Refusal?.Code);
        Assert.Null((await reopen.RunAsync(scene.Owner, scene.CaseId, "The ripe fruit is lantern-shaped.", default)).Refusal);

        var row = await scene.CaseAsync();
        Assert.Equal((CaseState.Open, 2), (row.State, row.Round));
        Assert.NotNull(Assert.Single(await scene.RowsAsync<DeterminationRow>()).SupersededAt);
        Assert.Null((await scene.ReadAsync(scene.Wren)).Mine);
        await scene.GiveAsync(scene.Wren, Baccatum);
        Assert.Equal(3, (await scene.RowsAsync<OpinionRow>()).Count);
    }

    [Theory, OnBoth]
    public async Task Closing_says_what_was_learned_and_a_closed_case_can_be_opened(string database)
    {
        await using var scene = await OpenAsync(database, opinionsNeeded: 1);
        var close = scene.Library.Act<CloseCase>();
        Assert.Equal(PeopleRefusals.MayNotCode, (await close.RunAsync(scene.Wren, scene.CaseId, "Nothing more will come.", default)).Refusal?.Code);
        await scene.GiveAsync(scene.Wren, Annuum);
        Assert.Equal(ReviewRefusals.ReasonMissingCode, (await close.RunAsync(scene.Wren, scene.CaseId, null, default)).Refusal?.Code);
        Assert.Null((await close.RunAsync(scene.Wren, scene.CaseId, "Unripe fruit can be purple here.", default)).Refusal);
        Assert.Equal(ReviewRefusals.AlreadyClosedCode, (await close.RunAsync(scene.Wren, scene.CaseId, "Once more, with words.", default)).Refusal?.Code);
        Assert.Null((await scene.Library.Act<ReopenCase>().RunAsync(scene.Librarian, scene.CaseId, "The seed came up different.", default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task Somebody_elses_case_is_not_a_members_to_open_or_close(string database)
    {
        await using var scene = await OpenAsync(database);
        var stranger = Actor.Member(Guid.NewGuid());
        Assert.Equal(CaseRefusals.NotFoundCode, (await scene.Library.Act<CloseCase>().RunAsync(stranger, scene.CaseId, "Not mine to close.", default)).Refusal?.Code);
        Assert.Equal(CaseRefusals.NotFoundCode, (await scene.Library.Act<ReopenCase>().RunAsync(stranger, scene.CaseId, "Not mine to open.", default)).Refusal?.Code);
        Assert.Null((await scene.Library.Act<CloseCase>().RunAsync(scene.Owner, scene.CaseId, null, default)).Refusal);
    }

    private static Task<Outcome<LookRequestRow>> AskAsync(ReviewScene scene, LookWanted wanted) =>
        scene.Library.Act<AskForLook>().RunAsync(scene.Wren, scene.CaseId, wanted, default);
}
