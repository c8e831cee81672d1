using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public class RebuildTests
{
    [Theory, OnBoth]
    public async Task The_tables_are_what_the_ledger_says(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await EveryActAsync(library);
        var report = (await library.Act<RebuildState>().RunAsync(Actor.System, checkOnly: true, default)).Allowed();
        Assert.Empty(report.Differences);
        Assert.True(report.Rows > 60);
    }

    [Theory, OnBoth]
    public async Task A_table_changed_behind_the_ledgers_back_is_found_and_set_right(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        await using (var db = await library.OpenAsync())
        {
            await db.Set<LotRow>().ExecuteUpdateAsync(set => set.SetProperty(lot => lot.Stock, 7));
            await db.Set<LoanRow>().ExecuteDeleteAsync();
        }
        var rebuild = library.Act<RebuildState>();
        Assert.Equal(2, (await rebuild.RunAsync(Actor.System, checkOnly: true, default)).Allowed().DifferenceCount);
        Assert.True((await rebuild.RunAsync(Actor.System, checkOnly: false, default)).Allowed().Repaired);
        Assert.Equal(0, (await rebuild.RunAsync(Actor.System, checkOnly: true, default)).Allowed().DifferenceCount);
    }

    private static async Task EveryActAsync(TestLibrary library)
    {
        var librarian = ASeedLibrary.Librarian;
        var first = (await library.ReceiveAsync()).Lot.ToString()!;
        var second = (await library.ReceiveAsync()).Lot.ToString()!;
        var part = (await library.Act<SplitLot>().RunAsync(librarian, first, Quantity.OfSeeds(100), null, "Drawer 2", default)).Allowed().ToString();
        var blend = (await library.Act<BlendLots>().RunAsync(librarian, [new(part, null), new(second, Quantity.OfSeeds(300))], null, null, isSure: true, default)).Allowed().ToString();
        var codes = await library.PacketsAsync(blend, 6);
        await library.Act<MoveSeed>().RunAsync(librarian, codes[5], "Freezer", default);
        var request = (await library.Act<RequestPacket>().RunAsync(ASeedLibrary.Member, blend, default)).Allowed();
        (await library.Act<PickPacket>().RunAsync(librarian, request.Value, codes[0], default)).Allowed();
        (await library.Act<LendPacket>().RunAsync(librarian, new Handover(codes[0], ASeedLibrary.Member.UserId, null, null, request.Value), default)).Allowed();
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(codes[1]), default)).Allowed();
        var eaten = (await library.Act<LendPacket>().RunAsync(ASeedLibrary.OtherMember, new Handover(codes[2]), default)).Allowed();
        (await library.Act<EndLoan>().RunAsync(ASeedLibrary.OtherMember, eaten.Loan.Value, LoanEnding.Eaten, null, default)).Allowed();
        (await library.Act<RecordGrowOut>().RunAsync(ASeedLibrary.Member, new Sowing(codes[1], null, null, GrowOutFacts.NotTold), default)).Allowed();
        (await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(codes[1], null, ASeedLibrary.Facts(), Quantity.OfMilligrams(18_000), null, StakeStayed: false), default)).Allowed();
        var home = (await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(codes[0], null, ASeedLibrary.Facts(), Quantity.OfSeeds(900)), default)).Allowed();
        (await library.Act<TestGermination>().RunAsync(librarian, blend, [new(50, 48), new(50, 47)], null, 14, true, isSure: true, default)).Allowed();
        (await library.Act<ClaimName>().RunAsync(librarian, new NameAsserted(home.Lot.ToString()!, null, "Millrace Orange", ClaimGrounds.GrowersWord, IsSure: true), default)).Allowed();
        (await library.Act<CountStock>().RunAsync(librarian, first, Quantity.OfSeeds(390), 6400, "mice in the drawer", isSure: false, default)).Allowed();
        (await library.Act<DiscardSeed>().RunAsync(librarian, codes[3], null, "wet", default)).Allowed();
        (await library.Act<SendSeedOn>().RunAsync(librarian, codes[4], null, "Weir Seed Library", default)).Allowed();
        var hold = (await library.Act<HoldSeed>().RunAsync(librarian, second, HoldReason.Health, default)).Allowed();
        (await library.Act<ReleaseHold>().RunAsync(librarian, hold.Value, "looked at, sound", default)).Allowed();
        (await library.Act<RecallSeed>().RunAsync(librarian, blend, "off-types came up", default)).Allowed();
        var head = (await library.Act<LedgerCheckpoint>().RunAsync(Actor.System, default)).Allowed();
        (await library.Act<CorrectEntry>().RunAsync(librarian, head.Height, "the wrong lot was called back", default)).Allowed();
    }
}
