using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Graph;

public class LineageGraphTests
{
    private readonly BlendStory _story = new();
    private readonly LineageGraph _graph;

    public LineageGraphTests() => _graph = LineageGraph.Of(_story.Library.State);

    [Fact]
    public void The_founders_of_a_blend_are_its_parents_founders_by_share()
    {
        var founders = _graph.Founders(_story.Late[3].Id.Node);
        Assert.Equal(0.75, founders[_story.Donated.Id.Node], 12);
        Assert.Equal(0.25, founders[_story.Swapped.Id.Node], 12);
    }

    // ../reference/data/pedigree/SOURCE.md: half lot X and half lot Y have founders that are the mean of theirs; a split changes none.
    [Fact]
    public void A_blend_of_halves_has_the_mean_of_both_founders_and_a_split_changes_none()
    {
        var library = new TestLibrary();
        var (one, two, three) = (library.Lot(100), library.Lot(100), library.Lot(100));
        var left = library.Blend(Day(2021), (one, Quantity.OfSeeds(60)), (two, Quantity.OfSeeds(40)));
        var right = library.Blend(Day(2021), (two, Quantity.OfSeeds(20)), (three, Quantity.OfSeeds(80)));
        var both = library.Blend(Day(2022), (left, Quantity.OfSeeds(50)), (right, Quantity.OfSeeds(50)));
        var split = library.Do(LibraryDesk.Lineage.Rules.LotRules.Split(library.New(Day(2023)), library.Taking(both, Quantity.OfSeeds(30)), library.Today));
        var graph = LineageGraph.Of(library.State);
        var expected = new[] { 0.3, 0.3, 0.4 };
        foreach (var lot in new[] { both.Id, split.Lot })
        {
            var founders = graph.Founders(lot.Node).OrderBy(founder => founder.Key.Value).Select(founder => Math.Round(founder.Value, 12));
            Assert.Equal(expected, founders);
        }
    }

    [Fact]
    public void Ancestry_and_descent_are_whole_and_each_others_mirror()
    {
        foreach (var node in _graph.Nodes)
        {
            foreach (var ancestor in _graph.Ancestors(node.Id))
            {
                Assert.Contains(node, _graph.Descendants(ancestor.Id));
                Assert.True(_graph.IsAncestor(ancestor.Id, node.Id));
                Assert.False(_graph.IsAncestor(node.Id, ancestor.Id));
            }
        }
    }

    [Fact]
    public void The_way_down_goes_through_the_grow_out()
    {
        var path = _graph.Path(_story.Swapped.Id.Node, _story.Late[0].Id.Node).Select(node => node.Id).ToArray();
        Assert.Equal([_story.Swapped.Id.Node, _story.SwapLot.Id.Node, _story.Blend.Id.Node, _story.Early[0].Id.Node, _story.Crop.Id.Node, _story.Harvested.Id.Node, _story.Late[0].Id.Node], path);
        Assert.Equal(path.Reverse(), _graph.Path(_story.Late[0].Id.Node, _story.Swapped.Id.Node).Select(node => node.Id));
    }

    [Fact]
    public void Two_packets_meet_in_their_lot() =>
        Assert.Equal([_story.Early[1].Id.Node, _story.Blend.Id.Node, _story.Early[2].Id.Node], _graph.Path(_story.Early[1].Id.Node, _story.Early[2].Id.Node).Select(node => node.Id));

    [Fact]
    public void Nothing_joins_two_strangers()
    {
        var library = new TestLibrary();
        var (one, two) = (library.Lot(10), library.Lot(10));
        Assert.Empty(LineageGraph.Of(library.State).Path(one.Id.Node, two.Id.Node));
    }

    [Fact]
    public void All_holders_downstream_are_found_through_the_grow_out()
    {
        var holders = _graph.Holders(_story.Swapped.Id.Node, _story.Library.State.Packets, []);
        Assert.Equal(10, holders.Count);
        Assert.Equal(10, holders.Select(holder => holder.Person).Distinct().Count());
        Assert.Empty(_graph.Holders(_story.Early[5].Id.Node, _story.Library.State.Packets, []));
    }

    [Fact]
    public void An_edge_that_runs_backwards_is_refused()
    {
        LineageNode[] nodes = [new(new(1), NodeKind.Lot, "a", Day(2020)), new(new(2), NodeKind.Lot, "b", Day(2020))];
        Assert.Throws<ArgumentException>(() => new LineageGraph(nodes, [new(new(2), new(1), 1, 1)]));
    }
}
