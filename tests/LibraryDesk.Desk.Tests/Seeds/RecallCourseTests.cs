using LibraryDesk.Data.Notices;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Bulk;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>A recall from its letters to its end, and opened again.</summary>
public class RecallCourseTests
{
    private const string Why = "round fruit came up";

    [Theory, OnBoth]
    public async Task A_recall_opened_again_asks_about_packets_that_left_while_it_was_closed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packets = await library.PacketsAsync(lot, 2);
        await LendAsync(library, packets[0]);
        var hold = await RecallAsync(library, lot);
        (await library.Act<RecallList>().AnswerAsync(ASeedLibrary.Member, hold, packets[0], RecallAnswer.Growing, default)).Allowed();
        Assert.Equal(ReopenRecall.OpenCode, (await library.Act<ReopenRecall>().RunAsync(ASeedLibrary.Librarian, hold, "no need", default)).Refusal?.Code);
        (await CloseAsync(library, hold, keepHeld: false)).Allowed();
        await LendAsync(library, packets[1]);
        var later = (await library.PacketsAsync(lot)).Single();

        (await library.Act<ReopenRecall>().RunAsync(ASeedLibrary.Librarian, hold, "closed in error", default)).Allowed();
        var recall = (await library.Act<RecallList>().OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed();
        Assert.Equal([.. packets.Order(), later], recall.Packets.OrderBy(packet => packet.Code == later).ThenBy(packet => packet.Code).Select(packet => packet.Code));
        Assert.Equal(RecallAnswer.Growing, recall.Packets.Single(packet => packet.Code == packets[0]).Answer);
        Assert.All(recall.Packets, packet => Assert.Null(packet.ToldAt));
        Assert.All((await library.Act<MemberLoans>().OfAsync(ASeedLibrary.Member, ASeedLibrary.Member.UserId!.Value, default)).Allowed().Loans, loan => Assert.True(loan.IsRecalled));
        Assert.Equal(2, (await library.Act<TellHolders>().PreviewAsync(ASeedLibrary.Librarian, [hold], default)).Allowed().People.Single().Packets.Count);
        Assert.Equal(SeedRefusals.OnHoldCode, (await library.Act<LendPacket>().RunAsync(ASeedLibrary.OtherMember, new Handover(later), default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Closing_with_answers_missing_is_asked_about_and_is_told_to_those_who_knew_of_the_recall(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var packet = await library.LentPacketAsync();
        var hold = await RecallAsync(library, "L26-001");
        (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();

        var asked = (await library.Act<CloseRecall>().RunAsync(ASeedLibrary.Librarian, [hold], "all well", true, false, default)).Refusal;
        Assert.Equal((CloseRecall.UnansweredCode, true), (asked?.Code, asked?.MayInsist));
        Assert.NotNull((await library.Act<CloseRecall>().RunAsync(ASeedLibrary.Librarian, [hold], " ", true, true, default)).Refusal);
        Assert.NotNull((await library.Act<CloseRecall>().RunAsync(ASeedLibrary.Member, [hold], "all well", true, true, default)).Refusal);
        Assert.Equal(1, (await library.Act<CloseRecall>().RunAsync(ASeedLibrary.Librarian, [hold], "all well", true, true, default)).Allowed().Told);

        var closed = (await library.Act<RecallList>().OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed();
        Assert.Equal("all well", closed.ClosedWhy);
        await using var db = await library.OpenAsync();
        Assert.Contains(await db.Set<NoticeRow>().Select(notice => notice.Text).ToListAsync(), text => text.Contains("all well", StringComparison.Ordinal));
        var view = (await library.Act<ShowPacket>().ReadAsync(ASeedLibrary.Member, packet, default)).Allowed();
        Assert.Equal(HoldReason.NameInDoubt, Assert.Single(view.Holds).Reason);
    }

    [Theory, OnBoth]
    public async Task A_second_recall_of_the_same_packets_takes_over_what_is_known(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packets = await library.PacketsAsync(lot, 2);
        foreach (var packet in packets) await LendAsync(library, packet);
        var first = await RecallAsync(library, packets[0]);
        (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, first, default)).Allowed();
        (await library.Act<RecallList>().AnswerAsync(ASeedLibrary.Librarian, first, packets[0], RecallAnswer.PassedOn, "a neighbour has it", default)).Allowed();

        Assert.Equal(1, (await library.Act<PreviewRecall>().ReadAsync(ASeedLibrary.Librarian, lot, default)).Allowed().RecalledAlready);
        var second = await RecallAsync(library, lot);
        var recall = (await library.Act<RecallList>().OneAsync(ASeedLibrary.Librarian, second, default)).Allowed();
        var known = recall.Packets.Single(packet => packet.Code == packets[0]);
        Assert.Equal((RecallAnswer.PassedOn, "a neighbour has it", true), (known.Answer, known.Note, known.ToldAt is not null));
        Assert.Null(recall.Packets.Single(packet => packet.Code == packets[1]).ToldAt);

        var third = await RecallAsync(library, await library.LentPacketAsync());
        Assert.Equal([third, second], (await library.Act<RecallList>().UntoldAsync(ASeedLibrary.Librarian, default)).Allowed().Recalls.Select(open => open.HoldId));
    }

    [Theory, OnBoth]
    public async Task An_answer_is_changed_or_taken_back_and_the_note_is_the_librarians(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var packet = await library.LentPacketAsync();
        var hold = await RecallAsync(library, packet);
        var list = library.Act<RecallList>();
        async Task<RecalledPacket> NowAsync() => (await list.OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Packets.Single();

        (await list.AnswerAsync(ASeedLibrary.Member, hold, packet, RecallAnswer.NotSown, "not for a member", default)).Allowed();
        Assert.Equal((RecallAnswer.NotSown, null), ((await NowAsync()).Answer, (await NowAsync()).Note));
        (await list.AnswerAsync(ASeedLibrary.Librarian, hold, packet, RecallAnswer.PassedOn, "the school garden", default)).Allowed();
        (await list.AnswerAsync(ASeedLibrary.Member, hold, packet, RecallAnswer.Gone, default)).Allowed();
        Assert.Equal((RecallAnswer.Gone, "the school garden"), ((await NowAsync()).Answer, (await NowAsync()).Note));
        (await list.AnswerAsync(ASeedLibrary.Librarian, hold, packet, null, "", default)).Allowed();
        Assert.Equal((null, null), ((await NowAsync()).Answer, (await NowAsync()).Note));
        Assert.Equal(RecallList.NoteLongCode, (await list.AnswerAsync(ASeedLibrary.Librarian, hold, packet, null, new string('x', RecallList.LongestNote + 1), default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Another_library_that_has_seed_of_it_is_told_and_that_is_noted(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        (await library.Act<SendSeedOn>().RunAsync(ASeedLibrary.Librarian, lot, Quantity.OfSeeds(5), "Harrow Fen Seed Circle", default)).Allowed();
        var hold = await RecallAsync(library, lot);
        var list = library.Act<RecallList>();
        var reached = (await list.OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Reach.Libraries.Single();
        Assert.Null(reached.ToldAt);
        Assert.NotNull((await list.LibraryToldAsync(ASeedLibrary.Member, hold, reached.Entry, default)).Refusal);
        Assert.Equal(RecallList.NotOnListCode, (await list.LibraryToldAsync(ASeedLibrary.Librarian, hold, reached.Entry + 1, default)).Refusal?.Code);
        foreach (var _ in new[] { 1, 2 }) (await list.LibraryToldAsync(ASeedLibrary.Librarian, hold, reached.Entry, default)).Allowed();
        Assert.NotNull((await list.OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Reach.Libraries.Single().ToldAt);
    }

    [Theory, OnBoth]
    public async Task The_letters_are_seen_before_they_go_and_name_the_seed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var packet = await library.LentPacketAsync();
        var hold = await RecallAsync(library, packet);
        var letters = (await library.Act<TellHolders>().PreviewAsync(ASeedLibrary.Librarian, [hold], default)).Allowed();
        var person = letters.People.Single();
        Assert.Equal(("A member", NoticeWay.Both), (person.Who, person.Way));
        Assert.Contains($"{packet} ‘Millrace Red’", letters.Letter, StringComparison.Ordinal);
        Assert.Contains(Why, letters.Letter, StringComparison.Ordinal);
        Assert.False(letters.HasAddress);
        await using var db = await library.OpenAsync();
        Assert.False(await db.Set<NoticeRow>().AnyAsync());
    }

    [Theory, OnBoth]
    public async Task Those_who_were_told_on_an_earlier_day_and_have_not_answered_are_reminded(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var packet = await library.LentPacketAsync();
        var hold = await RecallAsync(library, "L26-001");
        var (tell, list) = (library.Act<TellHolders>(), library.Act<RecallList>());
        Assert.Empty((await tell.PreviewReminderAsync(ASeedLibrary.Librarian, [hold], default)).Allowed().People);
        (await tell.RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();
        Assert.Equal(0, (await tell.RemindAsync(ASeedLibrary.Librarian, [hold], default)).Allowed().Letters);
        var first = library.Clock.GetUtcNow();

        library.Clock.Advance(TimeSpan.FromDays(20));
        var letters = (await tell.PreviewReminderAsync(ASeedLibrary.Librarian, [hold], default)).Allowed();
        Assert.Equal(first, letters.People.Single().ToldAt);
        Assert.StartsWith("Reminder of a recall", letters.Subject, StringComparison.Ordinal);
        Assert.Contains(Why, letters.Letter, StringComparison.Ordinal);
        Assert.Equal(PeopleRefusals.MayNotCode, (await tell.RemindAsync(ASeedLibrary.Member, [hold], default)).Refusal?.Code);
        Assert.Equal(1, (await tell.RemindAsync(ASeedLibrary.Librarian, [hold], default)).Allowed().Letters);
        async Task<RecalledPacket> NowAsync() => (await list.OneAsync(ASeedLibrary.Librarian, hold, default)).Allowed().Packets.Single(listed => listed.Code == packet);
        Assert.Equal((first, library.Clock.GetUtcNow()), ((await NowAsync()).FirstToldAt, (await NowAsync()).ToldAt));

        (await list.AnswerAsync(ASeedLibrary.Member, hold, packet, RecallAnswer.NotSown, default)).Allowed();
        library.Clock.Advance(TimeSpan.FromDays(20));
        Assert.Empty((await tell.PreviewReminderAsync(ASeedLibrary.Librarian, [hold], default)).Allowed().People);

        (await CloseAsync(library, hold, keepHeld: true)).Allowed();
        (await library.Act<ReopenRecall>().RunAsync(ASeedLibrary.Librarian, hold, "closed in error", default)).Allowed();
        Assert.Equal((first, null), ((await NowAsync()).FirstToldAt, (await NowAsync()).ToldAt));
    }

    [Theory, OnBoth]
    public async Task Nobody_is_reminded_of_a_packet_that_came_back_or_whose_loan_ended_since(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packets = await library.PacketsAsync(lot, 3);
        foreach (var packet in packets) await LendAsync(library, packet);
        var hold = await RecallAsync(library, lot);
        var tell = library.Act<TellHolders>();
        (await tell.RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();
        library.Clock.Advance(TimeSpan.FromDays(3));
        (await library.Act<CheckInBox>().RunAsync(ASeedLibrary.Librarian, [new(packets[0], LoanEnding.BroughtBack, null), new(packets[1], LoanEnding.Failed, null)], default)).Allowed();
        library.Clock.Advance(TimeSpan.FromDays(3));
        var person = (await tell.PreviewReminderAsync(ASeedLibrary.Librarian, [hold], default)).Allowed().People.Single();
        Assert.StartsWith(packets[2], person.Packets.Single(), StringComparison.Ordinal);
        // What stands on the shelf again has nobody to answer for it.
        Assert.Contains("Of 2 of the 2 packets", (await CloseAsync(library, hold, keepHeld: true)).Refusal?.Message, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task What_something_else_still_holds_is_named_when_a_recall_is_closed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packets = await library.PacketsAsync(lot, 2);
        var hold = await RecallAsync(library, lot);
        (await library.Act<HoldSeed>().RunAsync(ASeedLibrary.Librarian, packets[1], HoldReason.NameInDoubt, default)).Allowed();
        Assert.Equal([packets[1]], (await CloseAsync(library, hold, keepHeld: false)).Allowed().StillHeld);

        var again = await RecallAsync(library, packets[0]);
        (await library.Act<HoldSeed>().RunAsync(ASeedLibrary.Librarian, lot, HoldReason.NameInDoubt, default)).Allowed();
        Assert.Equal([lot], (await CloseAsync(library, again, keepHeld: false)).Allowed().StillHeld);
        Assert.Empty((await CloseAsync(library, await RecallAsync(library, packets[0]), keepHeld: true)).Allowed().StillHeld);
    }

    [Theory, OnBoth]
    public async Task A_blend_that_is_held_through_its_other_part_is_named_by_that_part(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var (lot, other) = ((await library.ReceiveAsync()).Lot.ToString()!, (await library.ReceiveAsync()).Lot.ToString()!);
        (await library.Act<BlendLots>().RunAsync(ASeedLibrary.Librarian, [new(lot, null), new(other, Quantity.OfSeeds(50))], null, null, isSure: true, default)).Allowed();
        var hold = await RecallAsync(library, lot);
        (await library.Act<HoldSeed>().RunAsync(ASeedLibrary.Librarian, other, HoldReason.NameInDoubt, default)).Allowed();
        Assert.Equal([other], (await CloseAsync(library, hold, keepHeld: false)).Allowed().StillHeld);
    }

    private static async Task LendAsync(TestLibrary library, string packet) => (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(packet), default)).Allowed();

    private static async Task<long> RecallAsync(TestLibrary library, string code) => (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, Why, default)).Allowed().Hold.Value;

    private static Task<Lineage.Outcome<RecallClosed>> CloseAsync(TestLibrary library, long hold, bool keepHeld) =>
        library.Act<CloseRecall>().RunAsync(ASeedLibrary.Librarian, [hold], "all accounted for", keepHeld, isSure: false, default);
}
