using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Picture;

/// <summary>Laws of pictures of hundreds of nodes, on lineages drawn by lot.</summary>
public class LargePictureTests
{
    public static TheoryData<int, PictureDirection> Drawn
    {
        get
        {
            var all = new TheoryData<int, PictureDirection>();
            for (var seed = 1; seed <= 6; seed++)
            {
                all.Add(seed, PictureDirection.Wide);
                all.Add(seed, PictureDirection.Narrow);
            }

            return all;
        }
    }

    [Theory, MemberData(nameof(Drawn))]
    public void No_two_labels_overlap(int seed, PictureDirection direction)
    {
        var pedigree = new RandomPedigree(seed, 60);
        foreach (var folds in (LineageFolds[])[LineageFolds.None, LineageFolds.For(pedigree.Graph, pedigree.Wish(direction), 60)])
        {
            var picture = LineageLayout.Lay(pedigree.Graph, pedigree.Wish(direction, folds));
            var lines = picture.Nodes.SelectMany(node => node.Lines.Select(line => (node.Label, line))).OrderBy(of => of.line.Left).ToArray();
            for (var at = 0; at < lines.Length; at++)
            {
                for (var other = at + 1; other < lines.Length && lines[other].line.Left < lines[at].line.Right; other++)
                {
                    var (one, two) = (lines[at].line, lines[other].line);
                    Assert.True(one.Bottom <= two.Top || two.Bottom <= one.Top, $"{lines[at].Label} and {lines[other].Label}");
                }
            }

            Assert.All(lines, of => Assert.True(of.line.Left >= 0 && of.line.Right <= picture.Width + 4 && of.line.Top >= 0 && of.line.Bottom <= picture.Height, of.Label));
        }
    }

    [Theory, MemberData(nameof(Drawn))]
    public void Every_node_answers_to_a_finger_of_its_own(int seed, PictureDirection direction)
    {
        var pedigree = new RandomPedigree(seed, 60);
        var nodes = LineageLayout.Lay(pedigree.Graph, pedigree.Wish(direction, LineageFolds.None)).Nodes;
        foreach (var (one, other) in nodes.SelectMany((one, at) => nodes.Skip(at + 1).Select(other => (one, other))))
        {
            Assert.True(Math.Abs(one.X - other.X) >= 44 || Math.Abs(one.Y - other.Y) >= 44, $"{one.Label} and {other.Label}");
        }
    }

    [Theory, MemberData(nameof(Drawn))]
    public void Every_node_is_drawn_or_folded_once_and_time_runs_one_way(int seed, PictureDirection direction)
    {
        var pedigree = new RandomPedigree(seed, 60);
        var random = new Random(seed);
        var folds = new LineageFolds(Some(pedigree, random), Some(pedigree, random));
        var picture = LineageLayout.Lay(pedigree.Graph, pedigree.Wish(direction, folds));
        Assert.Equal(pedigree.Graph.Nodes.Count, picture.Nodes.Sum(node => Math.Max(1, node.Folded.Count)));
        Assert.Equal(picture.Nodes.Count, picture.Nodes.Select(node => node.Key).Distinct().Count());
        var at = picture.Nodes.ToDictionary(node => node.Key);
        Assert.All(picture.Stems, stem => Assert.True(direction == PictureDirection.Wide ? at[stem.From].X < at[stem.To].X : at[stem.From].Y < at[stem.To].Y));
        Assert.Contains(picture.Nodes, node => node.Id == pedigree.Here && node.Folding == PictureFolding.None);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void What_is_folded_leaves_no_line_of_the_page_out(int seed)
    {
        var pedigree = new RandomPedigree(seed, 60);
        var wish = pedigree.Wish(PictureDirection.Wide);
        var picture = LineageLayout.Lay(pedigree.Graph, wish with { Folds = new(new HashSet<NodeId>(), new HashSet<NodeId>(pedigree.Lots)) });
        var shown = picture.Nodes.Where(node => node.Folding == PictureFolding.None).Select(node => node.Id).ToHashSet();
        Assert.All(pedigree.Graph.Ancestors(pedigree.Here), node => Assert.Contains(node.Id, shown));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void What_has_no_room_is_folded_as_far_out_as_can_be(int seed)
    {
        var pedigree = new RandomPedigree(seed, 60);
        var wish = pedigree.Wish(PictureDirection.Wide);
        var around = LineageFolds.For(pedigree.Graph, wish, 60);
        Assert.True(around.Before.Count + around.After.Count > 0);
        Assert.Same(LineageFolds.None, LineageFolds.For(pedigree.Graph, wish, 100_000));
    }

    [Fact]
    public void A_folded_descent_is_one_node_that_says_how_many_and_opens_again()
    {
        var story = new BlendStory();
        var graph = LineageGraph.Of(story.Library.State);
        var wish = new PictureWish(story.Swapped.Id.Node, new Dictionary<NodeId, NodeMark>(), new HashSet<NodeId>(), PictureDirection.Wide, 900);
        var below = graph.Descendants(story.SwapLot.Id.Node).Count(node => graph.Ancestors(node.Id).All(above => above.Id == story.SwapLot.Id.Node || above.Id == story.Swapped.Id.Node || graph.IsAncestor(story.SwapLot.Id.Node, above.Id)));
        var folded = LineageLayout.Lay(graph, wish with { Folds = new(new HashSet<NodeId>(), new HashSet<NodeId> { story.SwapLot.Id.Node }) });
        Assert.Equal(below, folded.Nodes.Where(node => node.Folding == PictureFolding.After).Sum(node => node.Folded.Count));
        Assert.DoesNotContain(LineageLayout.Lay(graph, wish).Nodes, node => node.Folding == PictureFolding.After);
    }

    [Fact]
    public void Around_a_centre_its_kin_stands_out_and_the_rest_is_dim()
    {
        var pedigree = new RandomPedigree(4, 60);
        var focus = pedigree.Lots[10];
        var kin = pedigree.Graph.Ancestors(focus).Concat(pedigree.Graph.Descendants(focus)).Select(node => node.Id).Append(focus).ToHashSet();
        var picture = LineageLayout.Lay(pedigree.Graph, pedigree.Wish(PictureDirection.Wide, LineageFolds.None, focus));
        Assert.All(picture.Nodes.Where(node => node.Folding == PictureFolding.None), node => Assert.Equal(!kin.Contains(node.Id), node.IsDim));
        Assert.Contains(picture.Nodes, node => node.IsDim);
    }

    private static HashSet<NodeId> Some(RandomPedigree pedigree, Random random) => [.. pedigree.Graph.Nodes.Where(_ => random.Next(8) == 0).Select(node => node.Id)];
}
