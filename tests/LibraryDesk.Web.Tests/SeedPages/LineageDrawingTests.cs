using Bunit;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;

namespace LibraryDesk.Web.Tests.SeedPages;

public class LineageDrawingTests : BunitContext
{
    private static readonly DateOnly Day = new(2025, 2, 1);
    private static readonly DateTimeOffset At = new(Day, TimeOnly.MinValue, TimeSpan.Zero);

    [Fact]
    public void Each_node_with_a_page_is_a_link_and_says_what_it_is()
    {
        var page = Render<LineageDrawing>(p => p.Add(d => d.Story, Story()).Add(d => d.Look, new LineageLook("/p/x")).Add(d => d.NarrowOnly, true));
        var lot = page.Find("a.node");
        Assert.Equal("/lots/L25-001", lot.GetAttribute("href"));
        Assert.Equal("L25-001 blend, 75 % + 25 %, lot, 1 February 2025, in doubt", lot.GetAttribute("aria-label"));
    }

    [Fact]
    public void The_node_the_page_is_about_is_no_link()
    {
        var page = Render<LineageDrawing>(p => p.Add(d => d.Story, Story()).Add(d => d.Look, new LineageLook("/p/x")).Add(d => d.NarrowOnly, true));
        Assert.Contains(page.FindAll("g.node"), node => node.GetAttribute("aria-label")!.Contains("you are here", StringComparison.Ordinal));
    }

    [Fact]
    public void The_list_holds_the_same_nodes_as_the_drawing()
    {
        var drawing = Render<LineageDrawing>(p => p.Add(d => d.Story, Story()).Add(d => d.Look, new LineageLook("/p/x")).Add(d => d.NarrowOnly, true));
        var list = Render<LineageList>(p => p.Add(l => l.Story, Story()));
        Assert.Equal(drawing.FindAll(".node").Count, list.FindAll("tbody tr").Count);
    }

    [Fact]
    public void Seed_that_came_with_a_label_alone_is_in_doubt_in_words_too()
    {
        var list = Render<LineageList>(p => p.Add(l => l.Story, Story()));
        Assert.Contains("swap table, label only; in doubt", list.Markup.ReplaceLineEndings("").Replace("<span>", "").Replace("</span>", ""), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("capsicum-baccatum", "A", "plants of it fit")]
    [InlineData("capsicum-baccatum", null, "plants of it fit")]
    [InlineData("capsicum-annuum", null, "a plant of it is off")]
    [InlineData("capsicum-baccatum", "B", "a plant of it is off")]
    public void What_a_determined_plant_showed_is_said_at_its_packet(string taxon, string? variety, string words)
    {
        var story = Story(new DeterminedPlant(new(4), "Q25-0001", new(3), 14, taxon, variety, At));
        var list = Render<LineageList>(p => p.Add(l => l.Story, story));
        Assert.Contains(words, list.FindAll("tbody tr")[^1].TextContent, StringComparison.Ordinal);
    }

    private static LineageStory Story(params IReadOnlyList<DeterminedPlant> plants)
    {
        var state = new SeedState();
        state.Put(new Accession(new(1), new(2025, 1), null, null, Day, "capsicum-baccatum", "A", SeedSource.Donor, 2024, Quantity.OfSeeds(300), Quantity.OfSeeds(0), null));
        state.Put(new Accession(new(2), new(2025, 2), null, null, Day, "capsicum-baccatum", "A", SeedSource.SwapTable, 2024, Quantity.OfSeeds(100), Quantity.OfSeeds(0), null));
        state.Put(new Lot(new(3), new(2025, 1), LotOrigin.Blend, "capsicum-baccatum", Day, Quantity.OfSeeds(400), Quantity.OfSeeds(380), null, null));
        state.Put(new Packet(new(4), new PacketCode('Q', 2025, 1), new(3), 9, Day, Quantity.OfSeeds(20), Quantity.OfSeeds(20), PacketStanding.OnShelf, null, null, null, null));
        state.Put(new NameClaim(new(6), new(1), "capsicum-baccatum", "A", ClaimGrounds.DonorsWord, null, Day, null));
        state.Put(new Hold(new(5), new(3), HoldReason.NameInDoubt, Day, null, null));
        state.Put(new LineageEdge(new(1), new(3), 0.75, 300));
        state.Put(new LineageEdge(new(2), new(3), 0.25, 100));
        state.Put(new LineageEdge(new(3), new(4), 1, 20));
        return new LineageStory(state, new Dictionary<long, GoesBy>(), new NodeId(4), plants);
    }
}
