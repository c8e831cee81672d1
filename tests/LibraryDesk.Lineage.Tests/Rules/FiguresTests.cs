using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Rules;

/// <summary>Figures that nobody means: a key held too long, grams for milligrams. The limits are the desk's own, no source.</summary>
public sealed class FiguresTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Theory]
    [InlineData(100_000_000, SeedUnit.Milligrams, null)]
    [InlineData(100_000_001, SeedUnit.Milligrams, SeedRefusals.TooMuchCode)]
    [InlineData(100_000_000, SeedUnit.Seeds, null)]
    [InlineData(999_999_999, SeedUnit.Seeds, SeedRefusals.TooMuchCode)]
    public void More_seed_than_a_library_takes_in_is_asked_about(long amount, SeedUnit unit, string? code)
    {
        var stock = SeedStock.Of(new TestLibrary().Lot(10));
        Assert.Equal(code, StockRules.Count(stock, new Quantity(amount, unit), 1000, Today, "found more", Today, isSure: true).Refusal?.Code);
    }

    [Theory]
    [InlineData(20, null)]
    [InlineData(21, StockRules.FarOffCode)]
    [InlineData(2, null)]
    [InlineData(1, StockRules.FarOffCode)]
    [InlineData(0, null)]
    public void A_count_far_off_what_is_expected_is_asked_about(long found, string? code)
    {
        var stock = SeedStock.Of(new TestLibrary().Lot(10));
        var no = StockRules.Count(stock, Quantity.OfSeeds(found), null, Today, "counted anew", Today).Refusal;
        Assert.Equal((code, code is not null), (no?.Code, no?.MayInsist == true));
        Assert.Null(StockRules.Count(stock, Quantity.OfSeeds(found), null, Today, "counted anew", Today, isSure: true).Refusal);
    }

    [Theory]
    [InlineData(6, 4, 2, null)]
    [InlineData(6, 5, 2, GrowingRules.PlantsCode)]
    public void Plants_that_were_pulled_out_gave_no_seed(int grown, int savedFrom, int removed, string? code) =>
        Assert.Equal(code, GrowingRules.Facts(GrowOutFacts.NotTold with { PlantsGrown = grown, PlantsSavedFrom = savedFrom, OffTypesSeen = removed, OffTypesRemoved = removed }, Today, Today)?.Code);

    [Theory]
    [InlineData(1_000_000, null, null)]
    [InlineData(1_000_001, null, GrowingRules.FiguresCode)]
    [InlineData(null, 1_000_001, GrowingRules.FiguresCode)]
    public void More_plants_or_metres_than_anybody_has_are_asked_about(int? plants, int? metres, string? code) =>
        Assert.Equal(code, GrowingRules.Facts(GrowOutFacts.NotTold with { PlantsGrown = plants, PlantsSavedFrom = plants, NearestMetres = metres }, Today, Today)?.Code);

    [Fact]
    public void Seed_is_not_taken_in_before_anybody_now_alive_kept_seed()
    {
        var offered = new Accessioned(new(1), new AccessionCode(2026, 1), TestLibrary.Donor, new DateOnly(1026, 11, 25), null, null, Quantity.OfSeeds(10), null, SeedSource.Donor, null);
        Assert.Equal(ReceivingRules.ReceivedDayCode, ReceivingRules.Receive(offered, Today).Refusal?.Code);
        Assert.Null(ReceivingRules.Receive(offered with { ReceivedOn = new DateOnly(1926, 11, 25) }, Today).Refusal);
    }
}
