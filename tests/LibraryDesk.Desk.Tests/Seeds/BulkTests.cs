using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Bulk;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public sealed class BulkTests
{
    [Theory, OnBoth]
    public async Task A_box_is_checked_in_whole(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var packets = await LentAsync(library, 3);
        var read = (await library.Act<CheckInBox>().ReadAsync(ASeedLibrary.Librarian, packets, default)).Allowed();
        Assert.Equal(3, read.Ready);
        (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, packets[1], "round fruit came up", default)).Allowed();
        Assert.Equal([false, true, false], (await library.Act<CheckInBox>().ReadAsync(ASeedLibrary.Librarian, packets, default)).Allowed().Packets.Select(packet => packet.IsRecalled));
        var done = (await library.Act<CheckInBox>().RunAsync(ASeedLibrary.Librarian,
            [new(packets[0], LoanEnding.ReturnedSeed, Quantity.OfSeeds(150)), new(packets[1], LoanEnding.BroughtBack, null), new(packets[2], LoanEnding.Eaten, null)], default)).Allowed();
        Assert.Equal((3, 1), (done.Packets, done.Lots.Count));
        await using var db = await library.OpenAsync();
        Assert.False(await db.Set<LoanRow>().AnyAsync(loan => loan.Ending == null));
        // Nobody told when it was sown: the day it left is kept as the earliest it can be, and said so.
        Assert.True((await db.Set<GrowOutRow>().SingleAsync()).SownLater);
        Assert.Equal(done.Lots, (await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, packets[0], default)).Allowed().CameHomeAs);
        Assert.Empty((await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, packets[2], default)).Allowed().CameHomeAs);
    }

    [Theory, OnBoth]
    public async Task One_packet_that_cannot_be_checked_in_leaves_the_whole_box_as_it_was(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var packets = await LentAsync(library, 2);
        var shelved = (await library.PacketsAsync((await library.ReceiveAsync("Other")).Lot.ToString()!)).Single();
        var before = await EntriesAsync(library);
        var outcome = await library.Act<CheckInBox>().RunAsync(ASeedLibrary.Librarian,
            [new(packets[0], LoanEnding.ReturnedSeed, Quantity.OfSeeds(90)), new(packets[1], LoanEnding.Failed, null), new(shelved, LoanEnding.Failed, null)], default);
        Assert.Equal(CheckInBox.NotLentCode, outcome.Refusal?.Code);
        Assert.Contains(shelved, outcome.Refusal!.Message, StringComparison.Ordinal);
        Assert.Equal(before, await EntriesAsync(library));
    }

    [Theory, OnBoth]
    public async Task A_packet_that_is_scanned_twice_counts_once(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var packet = (await LentAsync(library, 1)).Single();
        var read = (await library.Act<CheckInBox>().ReadAsync(ASeedLibrary.Librarian, [packet, packet], default)).Allowed();
        Assert.Equal((1, packet), (read.Ready, Assert.Single(read.Packets).PacketCode));
        Assert.Equal(packet, Assert.Single(read.Again));
        Assert.Equal(CheckInBox.TwiceCode, (await library.Act<CheckInBox>().RunAsync(ASeedLibrary.Librarian, [new(packet, LoanEnding.Failed, null), new(packet, LoanEnding.Failed, null)], default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Packets_of_several_lots_are_put_up_or_none(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var (one, other) = ((await library.ReceiveAsync()).Lot.ToString()!, (await library.ReceiveAsync("Other", 30)).Lot.ToString()!);
        var before = await EntriesAsync(library);
        var tooMuch = await library.Act<PutUpMany>().RunAsync(ASeedLibrary.Librarian, [new(one, 10, Quantity.OfSeeds(20)), new(other, 2, Quantity.OfSeeds(20))], null, default);
        Assert.Contains(other, tooMuch.Refusal!.Message, StringComparison.Ordinal);
        Assert.Equal(before, await EntriesAsync(library));
        var put = (await library.Act<PutUpMany>().RunAsync(ASeedLibrary.Librarian, [new(one, 10, Quantity.OfSeeds(20)), new(other, 1, Quantity.OfSeeds(20))], "Drawer 1", default)).Allowed();
        Assert.Equal(11, put.Codes.Distinct().Count());
    }

    [Theory, OnBoth]
    public async Task Members_do_neither(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        Assert.NotNull((await library.Act<CheckInBox>().RunAsync(ASeedLibrary.Member, [new("Q26-0001-A", LoanEnding.Failed, null)], default)).Refusal);
        Assert.NotNull((await library.Act<PutUpMany>().RunAsync(ASeedLibrary.Member, [new("L26-001", 1, Quantity.OfSeeds(1))], null, default)).Refusal);
    }

    private static async Task<IReadOnlyList<string>> LentAsync(TestLibrary library, int count)
    {
        var packets = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, count);
        foreach (var packet in packets) (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(packet), default)).Allowed();
        return packets;
    }

    private static async Task<long> EntriesAsync(TestLibrary library)
    {
        await using var db = await library.OpenAsync();
        return await db.Set<LedgerEntryRow>().LongCountAsync();
    }
}
