using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>What looks like a slip is asked about once, changes nothing until it is said to be meant, and is taken then.</summary>
public class SlipTests
{
    [Theory, OnBoth]
    public async Task The_same_bag_handed_in_twice_is_not_two_lots(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var brought = new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(100));
        var act = library.Act<ReturnSeed>();
        var first = (await act.RunAsync(ASeedLibrary.Librarian, brought, default)).Allowed();
        var again = (await act.RunAsync(ASeedLibrary.Librarian, brought, default)).Refusal;
        Assert.Equal((ReturnSeed.TakenBeforeCode, true), (again?.Code, again?.MayInsist));
        Assert.Contains(first.Lot.ToString()!, again!.Message, StringComparison.Ordinal);
        Assert.Equal(2, await LotsAsync(library));
        (await act.RunAsync(ASeedLibrary.Librarian, brought with { IsSure = true }, default)).Allowed();
        Assert.Equal(3, await LotsAsync(library));
    }

    [Theory, OnBoth]
    public async Task The_same_test_written_twice_is_one_test(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        Task<Outcome<TestId>> WriteAsync(bool isSure, params TestReplicate[] replicates) =>
            library.Act<TestGermination>().RunAsync(ASeedLibrary.Librarian, lot, replicates, null, null, false, isSure, default);
        (await WriteAsync(false, new(50, 48), new(50, 47))).Allowed();
        Assert.Equal(StockRules.TestedSoCode, (await WriteAsync(false, new(50, 48), new(50, 47))).Refusal?.Code);
        (await WriteAsync(false, new(50, 47), new(50, 48))).Allowed();
        (await WriteAsync(true, new(50, 48), new(50, 47))).Allowed();
        await using var db = await library.OpenAsync();
        Assert.Equal(3, await db.Set<GerminationTestRow>().CountAsync());
    }

    [Theory, OnBoth]
    public async Task A_name_that_would_rename_the_seed_is_asked_about(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var slip = new NameAsserted(lot, null, "Milrace Red", ClaimGrounds.GrowersWord);
        Assert.Equal(ClaimName.OtherNameCode, (await library.Act<ClaimName>().RunAsync(ASeedLibrary.Librarian, slip, default)).Refusal?.Code);
        Assert.Equal(ClaimName.OtherNameCode, (await library.Act<ClaimName>().RunAsync(ASeedLibrary.Librarian, slip with { Variety = null, Species = "capsicum-baccatum" }, default)).Refusal?.Code);
        (await library.Act<ClaimName>().RunAsync(ASeedLibrary.Librarian, slip with { Variety = "millrace red" }, default)).Allowed();
        (await library.Act<ClaimName>().RunAsync(ASeedLibrary.Librarian, slip with { IsSure = true }, default)).Allowed();
        Assert.Equal("Milrace Red", (await library.Act<ShowLot>().ReadAsync(ASeedLibrary.Librarian, lot, default)).Allowed().Name.Variety);
    }

    [Theory, OnBoth]
    public async Task Lots_of_different_names_are_blended_only_when_it_is_meant(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var (one, other) = ((await library.ReceiveAsync()).Lot.ToString(), (await library.ReceiveAsync("Lockside Plum")).Lot.ToString());
        Task<Outcome<Lineage.Codes.LotCode>> BlendAsync(bool isSure) => library.Act<BlendLots>().RunAsync(ASeedLibrary.Librarian, [new(one, null), new(other, null)], null, null, isSure, default);
        Assert.Equal(BlendLots.OtherNamesCode, (await BlendAsync(false)).Refusal?.Code);
        Assert.Equal(2, await LotsAsync(library));
        (await BlendAsync(true)).Allowed();
    }

    private static async Task<int> LotsAsync(TestLibrary library)
    {
        await using var db = await library.OpenAsync();
        return await db.Set<LotRow>().CountAsync();
    }
}
