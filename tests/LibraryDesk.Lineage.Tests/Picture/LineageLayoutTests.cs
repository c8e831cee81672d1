using System.Globalization;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Picture;

public class LineageLayoutTests
{
    private readonly BlendStory _story = new();
    private readonly LineageGraph _graph;

    public LineageLayoutTests() => _graph = LineageGraph.Of(_story.Library.State);

    [Theory]
    [InlineData(PictureDirection.Wide, 1150)]
    [InlineData(PictureDirection.Narrow, 358)]
    public void Every_node_stands_inside_and_none_on_another(PictureDirection direction, double width)
    {
        var picture = Lay(direction, width);
        Assert.All(picture.Nodes, node => Assert.True(node.X >= 0 && node.X <= picture.Width && node.Y >= 0 && node.Y <= picture.Height));
        foreach (var (one, other) in picture.Nodes.SelectMany((one, at) => picture.Nodes.Skip(at + 1).Select(other => (one, other))))
        {
            Assert.True(Math.Abs(one.X - other.X) > 24 || Math.Abs(one.Y - other.Y) > 24, $"{one.Label} and {other.Label}");
        }
    }

    [Theory]
    [InlineData(PictureDirection.Wide)]
    [InlineData(PictureDirection.Narrow)]
    public void Time_runs_one_way(PictureDirection direction)
    {
        var picture = Lay(direction, 1150);
        var at = picture.Nodes.ToDictionary(node => node.Key);
        Assert.All(picture.Stems, stem => Assert.True(direction == PictureDirection.Wide ? at[stem.From].X < at[stem.To].X : at[stem.From].Y < at[stem.To].Y));
    }

    [Fact]
    public void Plain_packets_are_folded_and_marked_ones_stay()
    {
        var picture = Lay(PictureDirection.Wide, 1150);
        var more = Assert.Single(picture.Nodes, node => node.Folded.Count > 0 && node.Id == _story.Harvested.Id.Node);
        Assert.Equal("10 more", more.Label);
        Assert.Contains(picture.Nodes, node => node.Id == _story.Late[2].Id.Node && node.Mark == NodeMark.Off);
        Assert.Equal(_graph.Nodes.Count, picture.Nodes.Sum(node => Math.Max(1, node.Folded.Count)));
    }

    [Fact]
    public void An_opened_lot_shows_all_its_packets()
    {
        var wish = Wish(PictureDirection.Wide, 1150) with { Opened = new HashSet<NodeId> { _story.Harvested.Id.Node } };
        Assert.DoesNotContain(LineageLayout.Lay(_graph, wish).Nodes, node => node.Folded.Count > 0 && node.Id == _story.Harvested.Id.Node);
    }

    [Fact]
    public void A_blends_stems_are_as_wide_as_its_shares()
    {
        var stems = Lay(PictureDirection.Wide, 1150).Stems.Where(stem => stem.To == Key(_story.Blend.Id.Node)).Select(stem => stem.Width).Order();
        Assert.Equal([5.2, 9.8], stems);
    }

    [Fact]
    public void Doubt_and_off_types_show_in_the_stems()
    {
        var stems = Lay(PictureDirection.Wide, 1150).Stems;
        Assert.Equal(StemCondition.InDoubt, stems.Single(stem => stem.From == Key(_story.SwapLot.Id.Node)).Condition);
        Assert.Equal(StemCondition.OffTypes, stems.Single(stem => stem.To == Key(_story.Late[2].Id.Node)).Condition);
        Assert.Equal(StemCondition.Sound, stems.Single(stem => stem.To == Key(_story.SecondYear.Id.Node)).Condition);
    }

    [Fact]
    public void Arrow_keys_reach_every_node_from_the_first()
    {
        var picture = Lay(PictureDirection.Wide, 1150);
        var nodes = picture.Nodes.ToDictionary(node => node.Key);
        var seen = new HashSet<string>();
        var open = new Stack<string>([picture.Nodes[0].Key]);
        while (open.TryPop(out var key))
        {
            if (!seen.Add(key)) continue;
            var keys = nodes[key].Keys;
            foreach (var next in new[] { keys.Parent, keys.Child, keys.Before, keys.After }.OfType<string>()) open.Push(next);
        }

        // The swapped seed has no parent and is nobody's sibling: Tab leads there, arrows lead on from it.
        Assert.Equal(nodes.Keys.Except([Key(_story.Swapped.Id.Node), Key(_story.SwapLot.Id.Node)]).Order(), seen.Order());
    }

    [Fact]
    public void The_same_graph_gives_the_same_picture()
    {
        var (one, two) = (Lay(PictureDirection.Wide, 1150), Lay(PictureDirection.Wide, 1150));
        Assert.Equal(one.Stems, two.Stems);
        Assert.Equal(one.Nodes.Select(node => (node.Key, node.X, node.Y)), two.Nodes.Select(node => (node.Key, node.X, node.Y)));
    }

    [Fact]
    public void A_long_chain_gives_up_room_between_days_to_fit_with_its_codes_whole()
    {
        var library = new TestLibrary();
        var lot = library.Lot(500, 2024);
        foreach (var year in (int[])[2024, 2025, 2026])
        {
            var packet = library.PutUp(lot, 1, 20, TestLibrary.Day(year, 3, 5))[0];
            lot = library.Harvest(library.Grow(packet, null, TestLibrary.Day(year, 5, 2)), 500, TestLibrary.Day(year, 10));
        }
        library.PutUp(lot, 4, 20, TestLibrary.Day(2026, 11, 2));
        var picture = LineageLayout.Lay(LineageGraph.Of(library.State), new(lot.Id.Node, new Dictionary<NodeId, NodeMark>(), new HashSet<NodeId>(), PictureDirection.Wide, 1112));
        Assert.Equal(1112, picture.Width);
        Assert.All(picture.Nodes.SelectMany(node => node.Lines), line => Assert.InRange(line.Right, 0, picture.Width));
        Assert.All(picture.Nodes.SelectMany(node => node.Lines), line => Assert.InRange(line.Left, 0, picture.Width));
        Assert.Equal([2024, 2025, 2026], picture.Years.Select(year => year.Year));
    }

    [Fact]
    public void Lines_that_need_not_cross_do_not()
    {
        // Four lines side by side, blended in pairs of first with third and second with fourth: drawn in order of arrival they would cross.
        var library = new TestLibrary();
        var lots = Enumerable.Range(0, 4).Select(_ => library.Lot(100)).ToArray();
        library.Blend(TestLibrary.Day(2022), (lots[0], Quantity.OfSeeds(50)), (lots[2], Quantity.OfSeeds(50)));
        library.Blend(TestLibrary.Day(2022), (lots[1], Quantity.OfSeeds(50)), (lots[3], Quantity.OfSeeds(50)));
        var picture = LineageLayout.Lay(LineageGraph.Of(library.State), new(lots[0].Id.Node, new Dictionary<NodeId, NodeMark>(), new HashSet<NodeId>(), PictureDirection.Wide, 900));
        var y = lots.Select(lot => picture.Nodes.Single(node => node.Id == lot.Id.Node && node.Folded.Count == 0).Y).ToArray();
        Assert.Equal(1, Math.Abs(Rank(y, 0) - Rank(y, 2)));
        Assert.Equal(1, Math.Abs(Rank(y, 1) - Rank(y, 3)));
    }

    private static int Rank(double[] values, int at) => values.Count(value => value < values[at]);

    private static string Key(NodeId id) => string.Create(CultureInfo.InvariantCulture, $"node-{id.Value}");

    private LineagePicture Lay(PictureDirection direction, double width) => LineageLayout.Lay(_graph, Wish(direction, width));

    private PictureWish Wish(PictureDirection direction, double width)
    {
        var marks = new Dictionary<NodeId, NodeMark>
        {
            [_story.Late[0].Id.Node] = NodeMark.Fits,
            [_story.Late[1].Id.Node] = NodeMark.Fits,
            [_story.Late[2].Id.Node] = NodeMark.Off,
            [_story.Late[3].Id.Node] = NodeMark.Off,
            [_story.Early[1].Id.Node] = NodeMark.Off,
        };
        return new(_story.Blend.Id.Node, marks, new HashSet<NodeId> { _story.Swapped.Id.Node, _story.SwapLot.Id.Node }, direction, width);
    }
}
