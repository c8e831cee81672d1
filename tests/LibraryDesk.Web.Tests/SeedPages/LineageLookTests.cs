using Bunit;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;

namespace LibraryDesk.Web.Tests.SeedPages;

public class LineageLookTests : BunitContext
{
    private static readonly DateOnly Day = new(2025, 2, 1);

    [Fact]
    public void What_stands_in_the_address_is_read_back()
    {
        var look = new LineageLook("/lots/L25-001") { Opened = Nodes(7), Focus = new(9), Folds = new(Nodes(3, 12), Nodes()) };
        Assert.Equal("/lots/L25-001?open=7&focus=9&before=3,12&after=0#lineage", look.Address);
        var read = LineageLook.Read("/lots/L25-001", null, "7", "9", "3,12", "0");
        Assert.Equal(look.Address, read.Address);
        Assert.NotNull(LineageLook.Read("/lots/L25-001", null, null, null, "0", "0").Folds);
        Assert.Null(LineageLook.Read("/lots/L25-001", null, null, null, null, null).Folds);
    }

    [Theory]
    [InlineData("-1,x,,99999999999999999999")]
    [InlineData("")]
    public void What_is_no_number_is_passed_over(string text) =>
        Assert.Equal("/p/x?before=0&after=0#lineage", LineageLook.Read("/p/x", "other", text, text, text, text).Address);

    [Fact]
    public void A_folded_branch_says_how_many_and_its_link_opens_it_again()
    {
        var folded = new LineageLook("/p/x") { Folds = new(Nodes(), Nodes(2)) };
        var page = Render<LineageDrawing>(p => p.Add(d => d.Story, Story()).Add(d => d.Look, folded).Add(d => d.NarrowOnly, true));
        var more = page.FindAll("a.node").Single(node => node.GetAttribute("href")!.StartsWith("/p/x?", StringComparison.Ordinal));
        Assert.Equal("2 later, of what was made of L25-001: show them", more.GetAttribute("aria-label"));
        Assert.Equal("/p/x?before=0&after=0#lineage", more.GetAttribute("href"));
    }

    [Fact]
    public void Folding_at_a_node_keeps_what_was_folded_before()
    {
        var look = new LineageLook("/p/x").Do(LineageLook.FoldBefore, new(4), new LineageFolds(Nodes(3), Nodes(2)));
        Assert.Equal("/p/x?before=3,4&after=2#lineage", look.Address);
        Assert.Equal("/p/x#lineage", new LineageLook("/p/x").Do("other", new(4), LineageFolds.None).Address);
    }

    [Fact]
    public void Around_a_centre_what_is_no_kin_is_dim()
    {
        var page = Render<LineageDrawing>(p => p.Add(d => d.Story, Story()).Add(d => d.Look, new LineageLook("/p/x") { Focus = new(3) }).Add(d => d.NarrowOnly, true));
        Assert.Equal("n-3", page.Find(".centre").Id);
        Assert.Equal("n-4", Assert.Single(page.FindAll(".node.dim")).Id);
    }

    [Fact]
    public void The_form_folds_and_centres_without_script()
    {
        var page = Render<LineageTools>(p => p.Add(t => t.Look, new LineageLook("/p/x") { Folds = new(Nodes(), Nodes(2)) }).Add(t => t.InSight, Story().Draw(new LineageLook("/p/x"), PictureDirection.Narrow, 358).Nodes));
        Assert.Equal("get", page.Find("form").GetAttribute("method"));
        Assert.Equal(["before=0", "after=2"], page.FindAll("input[type=hidden]").Select(input => $"{input.GetAttribute("name")}={input.GetAttribute("value")}"));
        Assert.Equal(["1", "2", "3", "4"], page.FindAll("option").Select(option => option.GetAttribute("value")).Order());
        Assert.Equal([LineageLook.Centre, LineageLook.FoldBefore, LineageLook.FoldAfter], page.FindAll("button").Select(button => button.GetAttribute("value")));
    }

    private static HashSet<NodeId> Nodes(params long[] ids) => [.. ids.Select(id => new NodeId(id))];

    // One accession, its lot, and two packets of it.
    private static LineageStory Story()
    {
        var state = new SeedState();
        state.Put(new Accession(new(1), new(2025, 1), null, null, Day, "capsicum-baccatum", "A", SeedSource.Donor, 2024, Quantity.OfSeeds(300), Quantity.OfSeeds(0), null));
        state.Put(new Lot(new(2), new(2025, 1), LotOrigin.Intake, "capsicum-baccatum", Day, Quantity.OfSeeds(300), Quantity.OfSeeds(260), null, null));
        foreach (var packet in (long[])[3, 4])
        {
            state.Put(new Packet(new(packet), new PacketCode('Q', 2025, (int)packet), new(2), 9, Day, Quantity.OfSeeds(20), Quantity.OfSeeds(20), PacketStanding.OnShelf, null, null, null, null));
            state.Put(new LineageEdge(new(2), new(packet), 1, 20));
        }

        state.Put(new LineageEdge(new(1), new(2), 1, 300));
        return new LineageStory(state, new Dictionary<long, GoesBy>(), new NodeId(1), []);
    }
}
