using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Names;

public class NameReckonerTests
{
    private readonly BlendStory _story = new();
    private readonly LineageGraph _graph;
    private readonly NameEvidence _evidence;

    public NameReckonerTests()
    {
        _graph = LineageGraph.Of(_story.Library.State);
        _evidence = NameEvidence.Of(_story.Library.State);
    }

    [Fact]
    public void A_swap_is_the_product_of_what_could_go_wrong()
    {
        // By hand: donor's word 0.97, then packed 0.99, grown 0.99.
        Assert.Equal(0.97, Of(_story.Intake.Id.Node).NoSwap, 12);
        Assert.Equal(0.97 * 0.99 * 0.99, Of(_story.FirstYear.Id.Node).NoSwap, 12);
    }

    [Fact]
    public void A_blend_mixes_purity_by_seed_share()
    {
        var (one, two, both) = (Of(_story.SecondYear.Id.Node), Of(_story.SwapLot.Id.Node), Of(_story.Blend.Id.Node));
        Assert.Equal((0.75 * one.Purity.Mean) + (0.25 * two.Purity.Mean), both.Purity.Mean, 12);
        Assert.Equal((0.75 * one.NoSwap) + (0.25 * two.NoSwap), both.NoSwap, 12);
    }

    [Fact]
    public void Seed_of_another_name_in_a_blend_is_not_true_to_its_name()
    {
        // By hand: a quarter of the seed is another variety's, so 0.75 of the first part's purity is left.
        var mixed = _evidence with { UnderOtherNames = new HashSet<NodeId> { _story.SwapLot.Id.Node } };
        Assert.Equal(0.75 * Of(_story.SecondYear.Id.Node).Purity.Mean, NameReckoner.Reckon(_graph, _story.Blend.Id.Node, mixed, RateTable.Standard).Purity.Mean, 12);
    }

    [Fact]
    public void Crossing_lowers_purity_and_roguing_raises_it()
    {
        var plain = Grown(GrowOutFacts.NotTold with { OthersInFlower = false });
        var crossed = Grown(GrowOutFacts.NotTold with { OthersInFlower = true });
        Assert.Equal(0.98, plain, 12);
        Assert.Equal(0.98 * 0.9, crossed, 12);

        // By hand: 2 of 20 off on a belief of 0.98 worth 20 gives 37.6/40 = 0.94; roguing at 0.7 gives 0.94 / (0.94 + 0.06 x 0.3).
        var rogued = Grown(GrowOutFacts.NotTold with { OthersInFlower = false, PlantsGrown = 20, OffTypesSeen = 2, OffTypesRemoved = 2 });
        Assert.Equal(0.94 / (0.94 + 0.018), rogued, 12);
    }

    [Fact]
    public void A_hybrid_is_not_saved_true()
    {
        var hybrid = _evidence with { IsHybrid = true };
        Assert.Equal(Of(_story.Intake.Id.Node).Purity.Mean, NameReckoner.Reckon(_graph, _story.Intake.Id.Node, hybrid, RateTable.Standard).Purity.Mean, 12);
        Assert.True(NameReckoner.Reckon(_graph, _story.FirstYear.Id.Node, hybrid, RateTable.Standard).Purity.Mean < 0.55);
    }

    [Fact]
    public void Plants_that_fit_make_a_swap_less_likely_and_off_ones_more()
    {
        var node = _story.Late[0].Id.Node;
        var plain = Of(node);
        Assert.True(With(5, 0).NoSwap > plain.NoSwap);
        Assert.True(With(0, 2).NoSwap < plain.NoSwap);
        Assert.True(With(4, 2).Purity.Mean < plain.Purity.Mean);

        NameConfidence With(int fits, int off) => NameReckoner.Reckon(_graph, node, _evidence with { Determined = new Dictionary<NodeId, (int, int)> { [node] = (fits, off) } }, RateTable.Standard);
    }

    [Fact]
    public void The_factors_lead_to_the_figures()
    {
        var confidence = Of(_story.Late[0].Id.Node);
        Assert.Equal(confidence.NoSwap, confidence.Factors[^1].NoSwap, 12);
        Assert.Equal(confidence.Purity.Mean, confidence.Factors[^1].Purity, 12);
        Assert.All(confidence.Factors.Where(factor => factor.RateId is not null), factor => Assert.NotEmpty(RateTable.Standard[factor.RateId!].Source));
    }

    [Fact]
    public void A_table_without_a_rate_is_refused() =>
        Assert.Throws<ArgumentException>(() => new RateTable(RateTable.Standard.Rates.Skip(1)));

    private NameConfidence Of(NodeId node) => NameReckoner.Reckon(_graph, node, _evidence, RateTable.Standard);

    private static double Grown(GrowOutFacts facts)
    {
        var library = new TestLibrary();
        var packet = library.PutUp(library.Lot(100), 1, 20)[0];
        var growOut = library.Grow(packet, null, facts: facts);
        return NameReckoner.Reckon(LineageGraph.Of(library.State), growOut.Id.Node, NameEvidence.Of(library.State), RateTable.Standard).Purity.Mean;
    }
}
