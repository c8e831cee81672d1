using Bunit;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;

namespace LibraryDesk.Web.Tests.SeedPages;

public class NameSurenessTests : BunitContext
{
    private static readonly DateOnly Day = new(2025, 2, 1);
    private static readonly DateTimeOffset At = new(Day, TimeOnly.MinValue, TimeSpan.Zero);

    // By hand from the table of rates: (1 - donor wrong) x (1 - swapped at packing) x purity, in twentieths.
    [Fact]
    public void A_donors_seed_in_a_packet_is_as_sure_as_its_rates_say()
    {
        var rates = RateTable.Standard;
        var oneSeed = (1 - rates[RateTable.DonorWrong].Value) * (1 - rates[RateTable.PackingSwap].Value) * rates[RateTable.StartPurity].Value;
        var page = Render<NameSureness>(p => p.Add(s => s.Story, Story()));
        Assert.Equal(FormattableString.Invariant($"{Math.Round(oneSeed * 20)} in 20"), page.Find(".big").TextContent);
    }

    [Fact]
    public void Each_rate_opens_to_what_it_means_and_where_it_comes_from()
    {
        var page = Render<NameSureness>(p => p.Add(s => s.Story, Story()));
        var opened = page.FindAll("details.rate").Select(rate => rate.QuerySelector("p")!.TextContent.Trim()).ToArray();
        Assert.Equal(2, opened.Length);
        Assert.All(opened, text => Assert.Contains(RateTable.OwnSetting, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_plant_that_is_off_makes_its_packet_less_sure_and_its_neighbours_too()
    {
        int Sure(params DeterminedPlant[] plants) =>
            int.Parse(Render<NameSureness>(p => p.Add(s => s.Story, Story(plants))).Find(".big").TextContent.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        var neighbour = Sure(new DeterminedPlant(new(9), "Q25-0009", new(3), 14, "capsicum-annuum", null, At));
        var own = Sure(new DeterminedPlant(new(4), "Q25-0001", new(3), 14, "capsicum-annuum", null, At));
        Assert.True(own <= neighbour && neighbour < Sure());
    }

    private static LineageStory Story(params IReadOnlyList<DeterminedPlant> plants)
    {
        var state = new SeedState();
        state.Put(new Accession(new(1), new(2025, 1), null, null, Day, "capsicum-baccatum", "A", SeedSource.Donor, 2024, Quantity.OfSeeds(300), Quantity.OfSeeds(0), null));
        state.Put(new Lot(new(3), new(2025, 1), LotOrigin.Intake, "capsicum-baccatum", Day, Quantity.OfSeeds(300), Quantity.OfSeeds(280), null, null));
        state.Put(new Packet(new(4), new PacketCode('Q', 2025, 1), new(3), 9, Day, Quantity.OfSeeds(20), Quantity.OfSeeds(20), PacketStanding.OnShelf, null, null, null, null));
        state.Put(new NameClaim(new(2), new(1), "capsicum-baccatum", "A", ClaimGrounds.DonorsWord, null, Day, null));
        state.Put(new LineageEdge(new(1), new(3), 1, 300));
        state.Put(new LineageEdge(new(3), new(4), 1, 20));
        return new LineageStory(state, new Dictionary<long, GoesBy>(), new NodeId(4), plants);
    }
}
