using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.MixUps;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public class RecallGroupTests
{
    [Theory, OnBoth]
    public async Task Recalls_started_in_one_go_are_one_until_the_last_is_closed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packets = await library.PacketsAsync(lot, 3);
        var started = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, string.Join(',', packets.Take(2)), "labels swapped at the packing table", default)).Allowed();
        await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, packets[2], "mould", default);

        var groups = await GroupsAsync(library);
        Assert.Equal([1, 2], groups.Select(group => group.Parts.Count).Order());
        var together = groups.Single(group => group.Parts.Count == 2);
        Assert.Equal(packets.Take(2), together.Together.Packets.Select(packet => packet.Code).Order());

        foreach (var (hold, closed) in started.Holds.Select((hold, place) => (hold, place + 1)))
        {
            Assert.True(together.IsOpen);
            (await library.Act<ReleaseHold>().RunAsync(ASeedLibrary.Librarian, hold.Value, "all accounted for", default)).Allowed();
            together = (await GroupsAsync(library)).Single(group => group.Parts.Count == 2);
            Assert.Equal(closed, together.Closed);
        }

        Assert.False(together.IsOpen);
        Assert.NotNull(together.Together.ClosedOn);
    }

    [Theory, OnBoth]
    public async Task All_parts_are_written_about_in_one_letter_and_closed_in_one_act(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.AddPersonAsync(ASeedLibrary.Member, "member@example.org");
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packets = await library.PacketsAsync(lot, 3);
        foreach (var packet in packets) (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(packet), default)).Allowed();
        var holds = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, string.Join(',', packets), "labels swapped at the packing table", default)).Allowed().Holds.Select(hold => hold.Value).ToArray();

        var told = (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, holds, default)).Allowed();
        Assert.Equal((1, 0), (told.Letters, told.NoAddress));
        await using var db = await library.OpenAsync();
        var letter = await db.Set<OutgoingMailRow>().OrderByDescending(mail => mail.Id).FirstAsync();
        Assert.All(packets, packet => Assert.Contains(packet, letter.Body, StringComparison.Ordinal));

        var release = library.Act<ReleaseHold>();
        (await release.RunAsync(ASeedLibrary.Librarian, holds[1], "this one was burnt", default)).Allowed();
        Assert.NotNull((await release.RunAsync(ASeedLibrary.Librarian, holds, " ", default)).Refusal);
        Assert.True((await GroupsAsync(library)).Single().IsOpen);
        Assert.Equal(2, (await release.RunAsync(ASeedLibrary.Librarian, holds, "all accounted for", default)).Allowed().Count);
        Assert.False((await GroupsAsync(library)).Single().IsOpen);
        Assert.NotNull((await release.RunAsync(ASeedLibrary.Librarian, holds, "once more", default)).Refusal);
        Assert.NotNull((await release.RunAsync(ASeedLibrary.Member, holds, "all accounted for", default)).Refusal);
        Assert.Equal(TellHolders.ClosedCode, (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, holds, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_borrower_owes_an_answer_until_it_is_given_or_the_recall_is_closed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var (first, second) = (await library.LentPacketAsync(), await library.LentPacketAsync());
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, first, "round fruit came up", default)).Allowed().Hold.Value;
        async Task<(bool, bool)> StandsAsync(string code) =>
            (await library.Act<MemberLoans>().OfAsync(ASeedLibrary.Member, ASeedLibrary.Member.UserId!.Value, default)).Allowed().Loans.Single(loan => loan.PacketCode == code) is var loan ? (loan.IsRecalled, loan.OwesRecallAnswer) : default;

        Assert.Equal((true, true), await StandsAsync(first));
        Assert.Equal((false, false), await StandsAsync(second));
        (await library.Act<Desk.Seeds.RecallList>().AnswerAsync(ASeedLibrary.Member, hold, first, RecallAnswer.Growing, default)).Allowed();
        Assert.Equal((true, false), await StandsAsync(first));
        (await library.Act<ReleaseHold>().RunAsync(ASeedLibrary.Librarian, hold, "all accounted for", default)).Allowed();
        Assert.Equal((false, false), await StandsAsync(first));
    }

    [Theory, OnBoth]
    public async Task Recalls_with_a_holder_to_tell_are_found_newest_first_until_all_are_told(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var (first, second) = (await library.LentPacketAsync(), await library.LentPacketAsync());
        var recalls = library.Act<Desk.Seeds.RecallList>();
        async Task<IEnumerable<long>> UntoldAsync() => (await recalls.UntoldAsync(ASeedLibrary.Librarian, default)).Allowed().Recalls.Select(recall => recall.HoldId);
        Assert.Empty(await UntoldAsync());

        var older = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, first, "round fruit came up", default)).Allowed().Hold.Value;
        var newer = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, second, "mould", default)).Allowed().Hold.Value;
        Assert.Equal([newer, older], await UntoldAsync());
        (await recalls.ToldAsync(ASeedLibrary.Librarian, newer, second, default)).Allowed();
        Assert.Equal([older], await UntoldAsync());
        (await library.Act<ReleaseHold>().RunAsync(ASeedLibrary.Librarian, older, "all accounted for", default)).Allowed();
        Assert.Empty(await UntoldAsync());
        Assert.NotNull((await recalls.UntoldAsync(ASeedLibrary.Member, default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task A_code_typed_twice_and_a_packet_of_a_recalled_lot_are_called_back_once(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var packet = (await library.PacketsAsync(lot)).Single();
        var typed = $"{lot}, {lot.Replace("-", "", StringComparison.Ordinal)}, {packet}";
        Assert.Single((await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, typed, "mould", default)).Allowed().Holds);
    }

    [Theory, OnBoth]
    public async Task Recalls_of_all_packets_of_a_packing_cover_a_swap_at_its_table_and_those_of_some_do_not(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var packets = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 3);
        await using var db = await library.OpenAsync();
        var packing = await db.Set<PacketRow>().Select(row => new { row.LotId, row.Packing }).FirstAsync();
        var swap = new Cause(CauseKind.SwappedAtPacking, new(packing.LotId), packing.Packing, "any", 0.1, SharePrior.All);
        (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, $"{packets[0]},{packets[1]}", "labels swapped", default)).Allowed();
        Assert.Equal((3, null), await CoveredAsync());
        var last = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, packets[2], "labels swapped", default)).Allowed().Hold.Value;
        Assert.Equal((3, last), await CoveredAsync());

        async Task<(int Packets, long? Recall)> CoveredAsync()
        {
            var scope = await CauseScope.OfAsync(db, swap, default);
            return (scope.Packets, scope.RecallId);
        }
    }

    private static async Task<IReadOnlyList<RecallGroup>> GroupsAsync(TestLibrary library) => (await library.Act<Desk.Seeds.RecallList>().ReadAsync(ASeedLibrary.Librarian, default)).Allowed().Groups;
}
