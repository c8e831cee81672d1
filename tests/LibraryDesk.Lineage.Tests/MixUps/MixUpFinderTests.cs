using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.MixUps;

public class MixUpFinderTests
{
    private readonly BlendStory _story = new();
    private readonly LineageGraph _graph;
    private readonly NameEvidence _evidence;
    private readonly Lot _stranger;

    public MixUpFinderTests()
    {
        _stranger = _story.Library.Lot(50);
        _graph = LineageGraph.Of(_story.Library.State);
        _evidence = NameEvidence.Of(_story.Library.State);
    }

    [Fact]
    public void Probabilities_are_those_of_the_slow_way()
    {
        // Packets without plants change no probability; the slow way runs over all of them, so two of each packing are kept.
        var kept = _story.Early.Take(2).Concat(_story.Late.Take(3)).Select(packet => packet.Id).ToHashSet();
        var packets = _story.Library.State.Packets.Where(packet => kept.Contains(packet.Id)).ToArray();
        TestedPlant[] plants = [Fits(_story.Late[0]), Off(_story.Late[1], 3), Off(_story.Early[1], 8), Fits(_story.Early[1]), Fits(_story.Late[2])];
        var causes = CauseList.Of(_graph, plants, packets, _evidence, RateTable.Standard)
            .Where(cause => cause.Node != _story.Donated.Id.Node && cause.Node.Value > _story.FirstYear.Id.Value)
            .ToArray();
        Assert.Equal(6, causes.DistinctBy(cause => cause.Kind).Count());
        var expected = BruteForce.Posterior(_graph, plants, causes, packets);
        var report = new MixUpFinder(_graph, plants, causes, packets).Find();
        Assert.True(report.IsExact);
        Assert.Equal(expected.OrderDescending().Take(30), report.Explanations.Take(30).Select(explanation => explanation.Probability), new Near(1e-4));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 6)]
    [InlineData(4, 1)]
    public void The_next_plant_of_seed_that_came_in_is_as_likely_off_as_reckoned_by_hand(double ifName, double ifOff)
    {
        var library = new TestLibrary();
        var lot = library.Lot(100);
        var graph = LineageGraph.Of(library.State);
        // Likelihoods are at most 1; only their ratio counts.
        var plant = new TestedPlant("1", lot.Id.Node, ifName / 10, ifOff / 10, IsByBorrower: false);
        var causes = CauseList.Of(graph, [plant], [], NameEvidence.Of(library.State), RateTable.Standard);
        Assert.Equal([CauseKind.ArrivedWrong, CauseKind.ArrivedMixed], causes.Select(cause => cause.Kind));
        var (wrong, mixed) = (causes[0].Prior, causes[1].Prior);
        // Mixed seed is off in any share phi alike: the means of phi, (1 - phi)^2 and phi (1 - phi) are 1/2, 1/3 and 1/6.
        var (n, f) = (ifName, ifOff);
        var weights = new[] { (1 - wrong) * (1 - mixed) * n, (wrong * (1 - mixed) * f) + (wrong * mixed * f), (1 - wrong) * mixed * (n + f) / 2 };
        var fits = weights[0] + ((1 - wrong) * mixed * ((n / 3) + (f / 6)));
        Assert.Equal(fits / weights.Sum(), new MixUpFinder(graph, [plant], causes, []).NextFits(lot.Id.Node), 4);
    }

    [Fact]
    public void All_probabilities_sum_to_1()
    {
        var report = Find([Off(_story.Late[0], 5), Fits(_story.Early[1])]);
        Assert.Equal(1, report.Explanations.Sum(explanation => explanation.Probability), 10);
    }

    [Fact]
    public void Off_types_in_both_kinds_from_one_packet_point_to_the_swap_table()
    {
        var report = Find([Fits(_story.Early[1]), Off(_story.Early[1], 50), Fits(_story.Late[0]), Off(_story.Late[0], 50), Fits(_story.Late[1]), Fits(_story.Late[2]), Fits(_story.Late[3])]);
        Assert.Equal((CauseKind.ArrivedWrong, _story.Swapped.Id.Node), (report.Causes[0].Cause.Kind, report.Causes[0].Cause.Node));
    }

    [Fact]
    public void Whole_packets_off_in_one_packing_alone_point_to_that_table()
    {
        var off = _story.Late.Take(3).SelectMany(packet => new[] { Off(packet, 50), Off(packet, 50) });
        var fit = _story.Late.Skip(3).Take(3).Concat(_story.Early.Skip(1).Take(4)).Select(Fits);
        var report = Find([.. off, .. fit]);
        Assert.Equal(CauseKind.SwappedAtPacking, report.Causes[0].Cause.Kind);
        Assert.Equal(_story.Late[0].Packing, report.Causes[0].Cause.Packing);
    }

    [Fact]
    public void A_packing_says_nothing_about_packets_of_another()
    {
        TestedPlant[] before = [Fits(_story.Early[1])];
        var late = Single(before, CauseKind.SwappedAtPacking, _story.Late[0].Packing);
        Assert.Null(late);
        var with = Find([Fits(_story.Early[1]), Fits(_story.Late[0])]);
        var more = Find([Fits(_story.Early[1]), Fits(_story.Early[2]), Fits(_story.Late[0])]);
        Assert.Equal(Odds(with), Odds(more), 9);

        // Against "nothing is wrong", a plant of the earlier packing neither speaks for nor against the later one.
        double Odds(MixUpReport report) => report.Explanations.Single(explanation => explanation.Causes is [{ Kind: CauseKind.SwappedAtPacking } cause] && cause.Packing == _story.Late[0].Packing).Probability / report.NothingWrong;
    }

    [Fact]
    public void Plants_that_all_fit_leave_nothing_wrong_first() =>
        Assert.Empty(Find([Fits(_story.Late[0]), Fits(_story.Late[1]), Fits(_story.Late[2]), Fits(_story.Early[1])]).Explanations[0].Causes);

    [Fact]
    public void A_plant_that_tells_nothing_moves_nothing()
    {
        TestedPlant[] plants = [Off(_story.Late[0], 9), Fits(_story.Early[1])];
        var causes = CauseList.Of(_graph, plants, _story.Library.State.Packets, _evidence, RateTable.Standard);
        var mute = new TestedPlant("mute", _story.Late[1].Id.Node, 0.3, 0.3);
        var before = new MixUpFinder(_graph, plants, causes, _story.Library.State.Packets).Find();
        var after = new MixUpFinder(_graph, [.. plants, mute], causes, _story.Library.State.Packets).Find();
        Assert.Equal(before.NothingWrong, after.NothingWrong, 10);
    }

    [Fact]
    public void The_plants_that_speak_for_a_cause_are_the_off_ones_downstream_of_it()
    {
        TestedPlant[] plants = [Off(_story.Late[0], 50), Fits(_story.Late[1]), Off(_story.Late[2], 50), Fits(_story.Early[1]), Off(_story.Late[0], 50), Off(_story.Late[2], 50), Fits(_story.Late[1])];
        var report = Find(plants.Select(plant => plant with { IsByBorrower = false }).ToArray());
        var packing = report.Explanations.First(explanation => explanation.Causes is [{ Kind: CauseKind.SwappedAtPacking } cause] && cause.Packing == _story.Late[0].Packing);
        Assert.True(packing.SpeaksFor[0] > 3 && packing.SpeaksFor[2] > 3);
        Assert.True(packing.SpeaksFor[1] < 0);
        Assert.Equal(0, packing.SpeaksFor[3], 1e-6);
    }

    [Fact]
    public void What_to_check_next_is_what_sets_the_leading_causes_apart()
    {
        TestedPlant[] plants = [Off(_story.Late[0], 50), Off(_story.Late[1], 50), Fits(_story.Late[2])];
        var causes = CauseList.Of(_graph, plants, _story.Library.State.Packets, _evidence, RateTable.Standard);
        var finder = new MixUpFinder(_graph, plants, causes, _story.Library.State.Packets);
        var checks = finder.NextChecks([_story.SwapLot.Id.Node, _stranger.Id.Node, _story.Harvested.Id.Node], 8, 0.05);
        Assert.Equal(_stranger.Id.Node, checks[^1].Node);
        Assert.Equal(0, checks[^1].Bits, 9);
        Assert.True(checks[0].Bits > 0.1);
        var one = finder.NextChecks([checks[0].Node], 1, 0.05)[0].Bits;
        Assert.True(checks[0].Bits >= one);
    }

    [Fact]
    public void The_recall_list_of_the_swap_table_is_everything_downstream()
    {
        var cause = Single([Off(_story.Late[0], 9)], CauseKind.ArrivedWrong, null, _story.Swapped.Id.Node)!;
        var list = RecallList.For(cause, _graph, _story.Library.State.Packets, []);
        Assert.Equal(20, list.Packets.Count);
        Assert.Equal(10, list.Holders.Count);
        Assert.Equal([_story.SwapLot.Id.Node, _story.Blend.Id.Node, _story.Harvested.Id.Node], list.Lots);
    }

    [Fact]
    public void The_recall_list_of_a_packing_leaves_other_packings_alone()
    {
        var cause = Single([Off(_story.Late[0], 9)], CauseKind.SwappedAtPacking, _story.Late[0].Packing)!;
        var list = RecallList.For(cause, _graph, _story.Library.State.Packets, []);
        Assert.Equal(_story.Late.Select(packet => packet.Id.Node), list.Packets);
        Assert.Empty(list.Lots);
    }

    private static TestedPlant Fits(Packet packet) => new("fits", packet.Id.Node, 0.5, 0.05);

    private static TestedPlant Off(Packet packet, double times) => new("off", packet.Id.Node, 0.5 / times, 0.5);

    private MixUpReport Find(TestedPlant[] plants) =>
        new MixUpFinder(_graph, plants, CauseList.Of(_graph, plants, _story.Library.State.Packets, _evidence, RateTable.Standard), _story.Library.State.Packets).Find();

    private Cause? Single(TestedPlant[] plants, CauseKind kind, long? packing, NodeId? node = null) =>
        CauseList.Of(_graph, plants, _story.Library.State.Packets, _evidence, RateTable.Standard).SingleOrDefault(cause => cause.Kind == kind && cause.Packing == packing && (node is null || cause.Node == node));

    private sealed class Near(double within) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) < within;

        public int GetHashCode(double value) => 0;
    }
}
