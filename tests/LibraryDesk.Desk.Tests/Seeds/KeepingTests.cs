using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Keeping;
using LibraryDesk.Desk.Seeds.Population;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public sealed class KeepingTests
{
    [Theory, OnBoth]
    public async Task A_lot_never_tested_is_due_after_the_librarys_days_and_an_uncounted_one_too(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        library.Clock.Advance(TimeSpan.FromDays(800));
        var due = (await library.Act<DueList>().ReadAsync(ASeedLibrary.Librarian, null, 0, default)).Allowed();
        Assert.Equal([(lot, DueKind.Test), (lot, DueKind.Recount)], due.Lines.Select(line => (line.Code, line.Kind)));
        Assert.Equal((2, 2), (due.Total, due.Overdue));
        (await library.Act<CountStock>().RunAsync(ASeedLibrary.Librarian, lot, Lineage.Seeds.Quantity.OfSeeds(500), null, null, isSure: false, default)).Allowed();
        Assert.DoesNotContain((await library.Act<DueList>().ReadAsync(ASeedLibrary.Librarian, null, 0, default)).Allowed().Lines, line => line.Kind == DueKind.Recount);
    }

    [Theory, OnBoth]
    public async Task The_kept_number_of_what_is_due_follows_the_day_the_ledger_and_the_settings(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        async Task<int?> DueAsync() => (await library.Act<DueCount>().ReadAsync(ASeedLibrary.Librarian, default))?.Total;
        Assert.Equal(0, await DueAsync());
        library.Clock.Advance(TimeSpan.FromDays(800));
        Assert.Equal(2, await DueAsync());
        (await library.Act<CountStock>().RunAsync(ASeedLibrary.Librarian, lot, Lineage.Seeds.Quantity.OfSeeds(500), null, null, isSure: true, default)).Allowed();
        Assert.Equal(1, await DueAsync());
        var settings = library.Act<LibrarySettings>();
        (await settings.ChangeAsync(Actor.System, (await settings.ReadAsync(default)).Revision, row => row.FirstTestDays = 3000, default)).Allowed();
        Assert.Equal(0, await DueAsync());
        Assert.Null(await library.Act<DueCount>().ReadAsync(ASeedLibrary.Member, default));
    }

    // A lot is changed behind the ledger's back: a figure that is read again would show it.
    [Theory, OnBoth]
    public async Task Lending_does_not_have_the_whole_library_read_again(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        library.Clock.Advance(TimeSpan.FromDays(800));
        async Task<int?> DueAsync() => (await library.Act<DueCount>().ReadAsync(ASeedLibrary.Librarian, default))?.Total;
        Assert.Equal(2, await DueAsync());
        await using var db = await library.OpenAsync();
        await db.Set<LotRow>().ExecuteUpdateAsync(set => set.SetProperty(row => row.Stock, 0));
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(code), default)).Allowed();
        Assert.Equal(2, await DueAsync());
        await library.ReceiveAsync();
        Assert.Equal(0, await DueAsync());
    }

    [Theory, OnBoth]
    public async Task A_count_that_was_undone_does_not_stand_as_the_last_one(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        library.Clock.Advance(TimeSpan.FromDays(800));
        (await library.Act<CountStock>().RunAsync(ASeedLibrary.Librarian, lot, Lineage.Seeds.Quantity.OfSeeds(500), null, null, isSure: false, default)).Allowed();
        async Task<int> RecountsAsync() => (await library.Act<DueList>().ReadAsync(ASeedLibrary.Librarian, DueKind.Recount, 0, default)).Allowed().Total;
        Assert.Equal(0, await RecountsAsync());
        await using var db = await library.OpenAsync();
        var count = await db.Set<LedgerEntryRow>().MaxAsync(entry => entry.Sequence);
        (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, count, "the wrong jar was counted", default)).Allowed();
        Assert.Equal(1, await RecountsAsync());
    }

    // 85 % of an initial 96 % is 81.6 %: 80 of 100 is below it, and above it by the absolute rule of 75 %.
    [Theory, OnBoth]
    public async Task A_lot_below_its_threshold_is_to_be_regrown_and_the_threshold_is_the_librarys(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        foreach (var germinated in new[] { 96, 80 })
        {
            (await library.Act<TestGermination>().RunAsync(ASeedLibrary.Librarian, lot, [new TestReplicate(100, germinated)], null, 14, true, isSure: true, default)).Allowed();
            library.Clock.Advance(TimeSpan.FromDays(100));
        }
        async Task<bool> RegrowAsync() => (await library.Act<DueList>().ReadAsync(ASeedLibrary.Librarian, DueKind.Regrow, 0, default)).Allowed().Total == 1;
        Assert.True(await RegrowAsync());
        var settings = library.Act<LibrarySettings>();
        (await settings.ChangeAsync(Actor.System, (await settings.ReadAsync(default)).Revision, row => (row.RegrowOfInitial, row.RegrowBelowPercent) = (false, 75), default)).Allowed();
        Assert.False(await RegrowAsync());
    }

    [Fact]
    public void Stores_are_read_with_comma_or_point_and_the_longest_name_that_fits_counts()
    {
        const string Stores = "Freezer: 5 %, -18\nFreezer, box 1: 4,5 % -20 °C";
        Assert.Equal((4.5, -20.0), Kept("Freezer, box 1"));
        Assert.Equal((5.0, -18.0), Kept("freezer, box 2"));
        Assert.Equal((null, null), Kept("Cupboard A"));
        Assert.Equal(StoreConditions.ShapeCode, StoreConditions.Read("Freezer -18").Refusal?.Code);

        (double?, double?) Kept(string place) => StoreConditions.For(Stores, place) is var kept ? (kept.MoisturePercent, kept.TemperatureCelsius) : default;
    }

    [Theory, OnBoth]
    public async Task What_the_same_grower_grew_that_season_is_said_to_librarians_alone(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var growOuts = new List<long>();
        foreach (var name in new[] { "Millrace Red", "Lockside Red" })
        {
            var packet = (await library.PacketsAsync((await library.ReceiveAsync(name)).Lot.ToString()!)).Single();
            (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(packet), default)).Allowed();
            growOuts.Add((await library.Act<RecordGrowOut>().RunAsync(ASeedLibrary.Member, new Sowing(packet, null, null, ASeedLibrary.Facts()), default)).Allowed().Value);
        }
        var beside = (await library.Act<GrownBeside>().ReadAsync(ASeedLibrary.Librarian, [growOuts[0]], default)).Allowed().ByGrowOut[growOuts[0]];
        var other = Assert.Single(beside);
        Assert.Equal(("Lockside Red", true), (other.Name.Variety, other.SameSpecies));
        Assert.NotNull((await library.Act<GrownBeside>().ReadAsync(ASeedLibrary.Member, [growOuts[0]], default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task A_release_can_be_undone_and_the_hold_stands_again(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var hold = (await library.Act<HoldSeed>().RunAsync(ASeedLibrary.Librarian, lot, HoldReason.Health, default)).Allowed();
        (await library.Act<ReleaseHold>().RunAsync(ASeedLibrary.Librarian, hold.Value, "clean", default)).Allowed();
        await using var db = await library.OpenAsync();
        var release = await db.Set<LedgerEntryRow>().MaxAsync(entry => entry.Sequence);
        (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, release, "the wrong lot was looked at", default)).Allowed();
        Assert.Equal("seed.on-hold", (await library.Act<PutUpPackets>().RunAsync(ASeedLibrary.Librarian, lot, 1, Lineage.Seeds.Quantity.OfSeeds(1), null, null, default)).Refusal?.Code);
    }
}
