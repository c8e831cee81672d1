using Bunit;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Seeds.MixUps;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Web.Features.MixUps;

namespace LibraryDesk.Web.Tests.SeedPages;

public class MixUpPartsTests : BunitContext
{
    private static readonly DateOnly Day = new(2024, 2, 10);
    private static readonly DateTimeOffset At = new(Day, TimeOnly.MinValue, TimeSpan.Zero);

    [Fact]
    public void A_cause_is_told_in_twenty_histories_with_what_it_takes_in()
    {
        var page = Render<MixUpCause>(p => p.Add(c => c.View, View(Swap(null))).Add(c => c.One, One(Swap(null))).Add(c => c.Number, 1).Add(c => c.MayRecall, true));
        Assert.Contains("happened in about 13", page.Markup, StringComparison.Ordinal);
        Assert.Contains("28 packets and 8 people", page.Markup, StringComparison.Ordinal);
        Assert.Contains("swap table", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void It_leads_to_the_preview_of_a_recall_and_never_recalls_by_itself()
    {
        var link = Render<MixUpCause>(p => p.Add(c => c.View, View(Swap(null))).Add(c => c.One, One(Swap(null))).Add(c => c.Number, 1).Add(c => c.MayRecall, true)).Find("a.btn");
        Assert.StartsWith("/recalls/new?code=A24-005&why=", link.GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_called_back_already_leads_to_that_recall()
    {
        var page = Render<MixUpCause>(p => p.Add(c => c.View, View(Swap(7))).Add(c => c.One, One(Swap(7))).Add(c => c.Number, 1).Add(c => c.MayRecall, true));
        Assert.Equal("/recalls/7", page.Find("a.btn").GetAttribute("href"));
    }

    [Fact]
    public void Volunteers_are_offered_no_recall() =>
        Assert.Empty(Render<MixUpCause>(p => p.Add(c => c.View, View(Swap(null))).Add(c => c.One, One(Swap(null))).Add(c => c.Number, 1)).FindAll("a.btn"));

    [Fact]
    public void A_plant_of_another_species_weighs_against_its_name_and_says_by_how_much()
    {
        var page = Render<MixUpPlants>(p => p.Add(c => c.View, View(Swap(null))));
        Assert.Contains("16 times likelier if it is another variety", page.Markup, StringComparison.Ordinal);
    }

    private static PlacedCause Swap(long? recall) => new(
        new Cause(CauseKind.ArrivedWrong, new(1), null, RateTable.LabelWrong, 0.15, SharePrior.All), new LineageNode(new(1), NodeKind.Accession, "A24-005", Day), Day, SeedSource.SwapTable, new CauseScope(["A24-005"], 28, 8, recall));

    private static RankedCause One(PlacedCause placed) => new(placed, 0.65, 0.4, OddsInTwenty.Share([0.65, 0.35])[0], [8.2]);

    private static MixUpView View(PlacedCause placed) => new(
        "L24-011", new GoesBy("Lamp", "capsicum-baccatum"),
        [new WeighedPlant(new DeterminedPlant(new(9), "Q26-0002-X", new(3), 22, "capsicum-annuum", null, At), new GoesBy("Lamp", "capsicum-baccatum"), 1 / 16.0, true, true)],
        [One(placed)], [new WholeExplanation([placed], 0.4)], 0.1, 0.03, [], true, 0);
}
