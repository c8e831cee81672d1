using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.Seeds;

public sealed class CounterTests
{
    [Theory, OnBoth]
    public async Task What_was_asked_for_is_taken_back_until_a_packet_is_put_aside(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        var withdraw = library.Act<WithdrawRequest>();
        var request = (await library.Act<RequestPacket>().RunAsync(ASeedLibrary.Member, lot, default)).Allowed();
        Assert.Equal(PeopleRefusals.NotYours.Code, (await withdraw.RunAsync(ASeedLibrary.OtherMember, request.Value, default)).Refusal?.Code);

        (await withdraw.RunAsync(ASeedLibrary.Member, request.Value, default)).Allowed();
        Assert.Empty((await library.Act<WaitingRequests>().ReadAsync(ASeedLibrary.Librarian, default)).Allowed().Requests);
        Assert.False((await withdraw.RunAsync(ASeedLibrary.Member, request.Value, default)).IsAllowed);

        var again = (await library.Act<RequestPacket>().RunAsync(ASeedLibrary.Member, lot, default)).Allowed();
        (await library.Act<PickPacket>().RunAsync(ASeedLibrary.Librarian, again.Value, code, default)).Allowed();
        Assert.Equal(WithdrawRequest.PutAsideCode, (await withdraw.RunAsync(ASeedLibrary.Member, again.Value, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task The_day_lists_what_was_lent_and_an_undo_takes_it_back(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var line = (await DayAsync(library)).Single();
        Assert.Equal((code, true, true), (line.PacketCode, line.IsLending, line.CanUndo));

        (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, line.Sequence, "undone at the counter", default)).Allowed();

        Assert.True((await DayAsync(library)).Single().IsUndone);
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.OtherMember, new Handover(code), default)).Allowed();
    }

    [Theory, OnBoth]
    public async Task The_day_says_which_seed_it_was_and_when_it_is_hoped_for(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = (await library.PacketsAsync((await library.ReceiveAsync("Millrace Red")).Lot.ToString()!)).Single();
        var due = new DateOnly(2026, 10, 15);
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(code, DueOn: due), default)).Allowed();

        var line = (await DayAsync(library)).Single();
        Assert.Equal(("Millrace Red", due), (line.Name.Variety, line.DueOn));
    }

    [Theory, OnBoth]
    public async Task Who_borrows_is_shown_with_what_is_called_back_and_what_is_overdue(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var codes = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 4);
        foreach (var code in codes.Take(3)) (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(code, DueOn: new DateOnly(2026, 8, 10)), default)).Allowed();
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(codes[3]), default)).Allowed();
        (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, codes[0], "round fruit came up", default)).Allowed();
        async Task<(int, int, int)> StandsAsync()
        {
            await using var scope = library.Services.CreateAsyncScope();
            var read = (await scope.ServiceProvider.GetRequiredService<ReadBorrower>().ReadAsync(ASeedLibrary.Librarian, ASeedLibrary.Member.UserId!.Value, default)).Allowed();
            Assert.False((await scope.ServiceProvider.GetRequiredService<ReadBorrower>().ReadAsync(ASeedLibrary.OtherMember, ASeedLibrary.Member.UserId!.Value, default)).IsAllowed);
            return (read.Out, read.CalledBack, read.Overdue);
        }

        Assert.Equal((4, 1, 0), await StandsAsync());
        library.Clock.Advance(TimeSpan.FromDays(11));
        Assert.Equal((4, 1, 2), await StandsAsync());
    }

    [Theory, OnBoth]
    public async Task A_name_that_several_go_by_gives_them_all_to_choose_from(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "river.one@example.org");
        await library.AddPersonAsync(ASeedLibrary.OtherMember, "river.two@example.org");
        await using var scope = library.Services.CreateAsyncScope();
        var people = scope.ServiceProvider.GetRequiredService<PeopleDirectory>();

        Assert.Equal(2, (await people.MeantAsync(ASeedLibrary.Librarian, "river", default)).Allowed().Count);
        Assert.Equal(ASeedLibrary.OtherMember.UserId, (await people.MeantAsync(ASeedLibrary.Librarian, "River.Two@example.org", default)).Allowed().Single().Id);
        Assert.False((await people.MeantAsync(ASeedLibrary.Librarian, "nobody at all", default)).IsAllowed);
        Assert.Equal("river.one@example.org", (await people.ByIdAsync(ASeedLibrary.Librarian, ASeedLibrary.Member.UserId!.Value, default)).Allowed().Email);
    }

    [Theory, OnBoth]
    public async Task Yesterday_is_not_on_the_days_list(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        library.Clock.Advance(TimeSpan.FromDays(1));

        Assert.Empty(await DayAsync(library));
    }

    [Theory, OnBoth]
    public async Task Seed_that_came_home_is_on_the_list_but_not_undone_there(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        (await ReturnAsync(library, code, ASeedLibrary.Facts())).Allowed();

        var line = (await DayAsync(library))[0];
        Assert.Equal((code, LoanEnding.ReturnedSeed, false), (line.PacketCode, line.Ending, line.CanUndo));
    }

    [Theory, OnBoth]
    public async Task Loans_past_their_day_are_counted_unless_they_ended_or_are_called_back(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var codes = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 4);
        var due = new DateOnly(2026, 10, 1);
        foreach (var (code, day) in codes.Zip(new DateOnly?[] { due, due, due, null }))
            (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(code, null, null, day), default)).Allowed();
        async Task<int> OverdueAsync() => (await library.Act<MemberLoans>().CountOverdueAsync(ASeedLibrary.Librarian, default)).Allowed();
        library.Clock.SetUtcNow(new DateTimeOffset(2026, 10, 1, 12, 0, 0, TimeSpan.Zero));
        Assert.Equal(0, await OverdueAsync());
        library.Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(3, await OverdueAsync());
        (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, codes[0], "round fruit came up", default)).Allowed();
        Assert.Equal(2, await OverdueAsync());
        var ending = (await library.Act<MemberLoans>().OpenOfPacketAsync(ASeedLibrary.Librarian, codes[1], default)).Allowed();
        (await library.Act<EndLoan>().RunAsync(ASeedLibrary.Librarian, ending.LoanId, LoanEnding.Failed, null, default)).Allowed();
        Assert.Equal(1, await OverdueAsync());
        Assert.Equal(PeopleRefusals.MayNotCode, (await library.Act<MemberLoans>().CountOverdueAsync(ASeedLibrary.Member, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Only_librarians_see_the_day(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);

        Assert.False((await library.Act<CounterDay>().ReadAsync(ASeedLibrary.Member, default)).IsAllowed);
    }

    [Theory, OnBoth]
    public async Task A_label_carries_the_year_of_the_harvest_not_of_the_return(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        library.Clock.SetUtcNow(new DateTimeOffset(2026, 8, 1, 12, 0, 0, TimeSpan.Zero));
        var code = await library.LentPacketAsync();
        library.Clock.SetUtcNow(new DateTimeOffset(2027, 1, 9, 12, 0, 0, TimeSpan.Zero));
        var lot = (await ReturnAsync(library, code, ASeedLibrary.Facts() with { HarvestedOn = new DateOnly(2026, 10, 6) })).Allowed().Lot!.Value.ToString();

        var label = (await library.Act<ReadLabels>().ByCodeAsync(ASeedLibrary.Librarian, [lot], default)).Allowed().Labels.Single();

        Assert.Equal([2026], label.Grown.HarvestYears);
        Assert.Equal([Isolation.Distance], label.Grown.Isolations);
        Assert.Equal(40, label.Grown.NearestMetres);
        Assert.Equal("Millrace Red", label.Name.Variety);
    }

    [Theory, OnBoth]
    public async Task A_harvest_in_days_to_come_is_refused(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();

        var outcome = await ReturnAsync(library, code, ASeedLibrary.Facts() with { HarvestedOn = new DateOnly(2026, 10, 6) });

        Assert.Equal(GrowingRules.HarvestDayCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Labels_come_in_the_order_asked_for_and_name_what_is_missing(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var codes = await library.PacketsAsync(lot, 3);

        var found = (await library.Act<ReadLabels>().ByCodeAsync(ASeedLibrary.Librarian, [codes[2].ToLowerInvariant(), lot, codes[0], "L19-999", codes[2]], default)).Allowed();

        Assert.Equal([codes[2], lot, codes[0]], found.Labels.Select(label => label.Code));
        Assert.Equal(["L19-999"], found.Missing);
    }

    [Theory, OnBoth]
    public async Task A_recall_stands_on_the_label_of_what_is_downstream(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        await library.PacketsAsync(lot);
        (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, lot, "round fruit came up", default)).Allowed();

        var label = (await library.Act<ReadLabels>().OfLotAsync(ASeedLibrary.Librarian, lot, default)).Allowed().Labels.Single();

        Assert.True(label.IsNameInDoubt);
    }

    [Theory, OnBoth]
    public async Task A_preview_lists_what_the_recall_then_takes_in(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var lot = (await library.Act<ReadLabels>().ByCodeAsync(ASeedLibrary.Librarian, [code], default)).Allowed().Labels.Single().LotCode;
        await library.PacketsAsync(lot, 2);

        var preview = (await library.Act<PreviewRecall>().ReadAsync(ASeedLibrary.Librarian, lot, default)).Allowed();
        var started = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, lot, "round fruit came up", default)).Allowed();

        Assert.Equal((started.Packets, started.Holders), (preview.Packets.Count, preview.Holders));
        Assert.Equal(code, preview.Packets[0].Code);
    }

    [Theory, OnBoth]
    public async Task Each_holder_gets_one_letter_and_only_once(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var code = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "round fruit came up", default)).Allowed().Hold.Value;

        var first = (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();
        var second = (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();

        await using var db = await library.OpenAsync();
        var letter = await db.Set<OutgoingMailRow>().SingleAsync();
        Assert.Equal((1, 0, 0), (first.Letters, first.NoAddress, second.Letters));
        Assert.Equal("member@example.org", letter.To);
        Assert.Contains("round fruit came up", letter.Body, StringComparison.Ordinal);
        Assert.Contains(code, letter.Subject, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_holder_without_an_address_is_counted_and_stays_untold(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "round fruit came up", default)).Allowed().Hold.Value;

        var told = (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();

        Assert.Equal((0, 1), (told.Letters, told.NoAddress));
        Assert.Null((await library.Act<RecallList>().OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Packets.Single().ToldAt);
    }

    [Theory, OnBoth]
    public async Task A_closed_recall_writes_to_nobody(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "round fruit came up", default)).Allowed().Hold.Value;
        (await library.Act<ReleaseHold>().RunAsync(ASeedLibrary.Librarian, hold, "all accounted for", default)).Allowed();

        Assert.Equal(TellHolders.ClosedCode, (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_member_reads_their_own_loan_and_no_other(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        var loan = (await library.Act<MemberLoans>().OfAsync(ASeedLibrary.Member, ASeedLibrary.Member.UserId!.Value, default)).Allowed().Loans.Single().LoanId;

        Assert.True((await library.Act<MemberLoans>().OneAsync(ASeedLibrary.Member, loan, default)).IsAllowed);
        Assert.Equal(PeopleRefusals.NotYours.Code, (await library.Act<MemberLoans>().OneAsync(ASeedLibrary.OtherMember, loan, default)).Refusal?.Code);
    }

    private static async Task<IReadOnlyList<CounterLine>> DayAsync(TestLibrary library) =>
        (await library.Act<CounterDay>().ReadAsync(ASeedLibrary.Librarian, default)).Allowed().Lines;

    private static Task<Lineage.Outcome<SeedReturned>> ReturnAsync(TestLibrary library, string code, GrowOutFacts facts) =>
        library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(code, null, facts, Quantity.OfSeeds(200)), default);
}
