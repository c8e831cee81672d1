using Bunit;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Seeds.Keeping;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Keeping;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.Lots;

namespace LibraryDesk.Web.Tests.SeedPages;

public class KeepingPartsTests : BunitContext
{
    private static readonly DateOnly Day = new(2026, 2, 1);

    // Ellis & Roberts 1980 with the constants of Demir et al. 2009 for pepper: 98 % falls to 89.380 % in 7300 days at 6 % and 5 degrees Celsius (viability tables of the reference data).
    [Fact]
    public void A_forecast_names_its_constants_and_its_conditions()
    {
        var facts = Facts("capsicum-annuum", "Store: 6 %, 5", "Store, box 1", 98);
        Assert.Equal(89.380, facts.Forecast!.PercentOn(Day.AddDays(7300)), 2);
        var page = Render<LotKeeping>(p => p.Add(k => k.Facts, facts));
        Assert.Contains("Demir", page.Markup, StringComparison.Ordinal);
        Assert.Contains("6 % seed moisture and 5 °C", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_constants_are_published_the_page_says_that_it_cannot_forecast() =>
        Assert.Contains("Cannot forecast", Render<LotKeeping>(p => p.Add(k => k.Facts, Facts("capsicum-baccatum", "Store: 6 %, 5", "Store", 98))).Markup, StringComparison.Ordinal);

    [Fact]
    public void Where_nobody_measured_the_store_the_page_says_so_too() =>
        Assert.Contains("not known", Render<LotKeeping>(p => p.Add(k => k.Facts, Facts("capsicum-annuum", "", "Drawer 3", 98))).Markup, StringComparison.Ordinal);

    [Fact]
    public void The_sequential_plan_stands_as_a_table_with_its_source()
    {
        var page = Render<SequentialTest>(p => p.Add(t => t.Plan, new SequentialPlan(0.85)));
        Assert.Equal(8, page.FindAll("tbody tr").Count);
        Assert.Contains("Wald 1945", page.Markup, StringComparison.Ordinal);
    }

    private static KeepingFacts Facts(string species, string stores, string place, int germinated)
    {
        var lot = new Lot(new(3), new(2025, 1), LotOrigin.Intake, species, Day, Quantity.OfSeeds(300), Quantity.OfSeeds(280), null, place);
        var test = new GerminationTest(new(4), lot.Id, Day, [new TestReplicate(100, germinated)], 14);
        return KeepingFacts.Of(lot, [test], species, new LibrarySettingsRow { Stores = stores });
    }
}
