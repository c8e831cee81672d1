using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Seeds;
using Xunit.Abstractions;

namespace LibraryDesk.Lineage.Tests.MixUps;

/// <summary>Histories with a mix-up drawn from the finder's own priors: how often is the true cause first, and are the odds true?</summary>
public class SimulatedHistoriesTests(ITestOutputHelper output)
{
    private readonly BlendStory _story = new();

    // Only histories where something came up off: nobody looks for a mix-up without. Grown by the library, so that a further packet does not bring a further cause of its own, a borrower's lost label.
    // Some causes look alike from below (two grow-outs of one unbroken line), so "first" has a ceiling; the nearest three are what a librarian looks at.
    [Fact]
    public void The_true_cause_is_found_more_often_the_more_plants_are_determined()
    {
        var few = Simulate(3, 100, false);
        var many = Simulate(14, 100, false);
        output.WriteLine($"True cause first: {few.First:P0} with 3 plants, {many.First:P0} with 14; among the first three: {few.Three:P0} and {many.Three:P0}.");
        Assert.True(many.Three > few.Three && many.Three > 0.5);
    }

    [Fact]
    public void Odds_are_true_on_average()
    {
        // A cause said to be 30 % likely is the true one 30 % of the time: the sum of said probabilities is the count of hits, within 4 standard errors.
        var run = Simulate(5, 1000, true);
        output.WriteLine($"Leading cause said {run.Said:F1}, was {run.Hits}.");
        Assert.True(Math.Abs(run.Said - run.Hits) < 4 * Math.Sqrt(run.Variance), $"said {run.Said}, was {run.Hits}");
    }

    private (double First, double Three, double Said, int Hits, double Variance) Simulate(int count, int histories, bool byBorrowers)
    {
        var graph = LineageGraph.Of(_story.Library.State);
        var packets = _story.Library.State.Packets;
        var all = packets.Where(packet => packet.Holder is not null || packet.Lot == _story.Blend.Id).ToArray();
        var random = new Random(20261125);
        var (hits, three, said, variance) = (0, 0, 0.0, 0.0);
        for (var history = 0; history < histories;)
        {
            var from = Enumerable.Range(0, count).Select(_ => all[random.Next(all.Length)].Id.Node).ToArray();
            var mute = from.Select(node => new TestedPlant("", node, 0.5, 0.5, IsByBorrower: byBorrowers)).ToArray();
            var causes = CauseList.Of(graph, mute, packets, NameEvidence.Of(_story.Library.State), RateTable.Standard);
            var truth = Draw(causes, random);
            var off = Fates(graph, packets, mute, truth, random);

            if (!byBorrowers && !off.Contains(true)) continue;
            history++;

            // Traits tell a plant that is off from one that is not nine times in ten.
            var plants = mute.Select((plant, at) => random.NextDouble() < 0.9 == off[at] ? plant with { IfName = 0.1, IfOff = 0.9 } : plant with { IfName = 0.9, IfOff = 0.1 }).ToArray();
            var report = new MixUpFinder(graph, plants, causes, packets).Find();

            // The leading cause as the screen shows it: a single one, given that something went wrong.
            var single = report.Explanations.Where(explanation => explanation.Causes.Count == 1).ToArray();
            var sum = single.Sum(explanation => explanation.Probability);
            var lead = single[0].Probability / sum;
            said += lead;
            variance += lead * (1 - lead);
            if (single[0].Causes[0] == truth) hits++;
            if (single.Take(3).Any(explanation => explanation.Causes[0] == truth)) three++;
        }

        return ((double)hits / histories, (double)three / histories, said, hits, variance);
    }

    private static Cause Draw(IReadOnlyList<Cause> causes, Random random)
    {
        // One cause, drawn by its odds against not happening: the prior of "exactly this one".
        var odds = causes.Select(cause => cause.Prior / (1 - cause.Prior)).ToArray();
        var at = random.NextDouble() * odds.Sum();
        for (var cause = 0; cause < odds.Length; cause++)
        {
            at -= odds[cause];
            if (at < 0) return causes[cause];
        }

        return causes[^1];
    }

    private static bool[] Fates(LineageGraph graph, IReadOnlyCollection<Packet> packets, TestedPlant[] plants, Cause truth, Random random)
    {
        var phi = truth.Share.IsAll ? 1 : DrawBeta(truth.Share, random);
        var swapped = packets.Where(packet => packet.Packing == truth.Packing && random.NextDouble() < phi).Select(packet => packet.Id.Node).ToHashSet();
        return plants.Select(plant => truth.Kind switch
        {
            CauseKind.LabelLost => plant.From == truth.Node && random.NextDouble() < phi,
            _ => IsOff(plant.From),
        }).ToArray();

        // One seed goes up the graph, parent by parent, as the shares have it.
        bool IsOff(NodeId node)
        {
            for (; ;)
            {
                if (truth.Kind == CauseKind.SwappedAtPacking ? swapped.Contains(node) : node == truth.Node) return truth.Kind == CauseKind.SwappedAtPacking || random.NextDouble() < phi;
                var above = graph.Above(node);
                if (above.Count == 0) return false;
                var at = random.NextDouble();
                node = above.First(edge => (at -= edge.Share) < 0 || edge == above[^1]).Parent;
            }
        }
    }

    // Whole parameters: the a-th smallest of a + b - 1 uniform draws.
    private static double DrawBeta(SharePrior prior, Random random) =>
        Enumerable.Range(0, (int)(prior.Alpha + prior.Beta) - 1).Select(_ => random.NextDouble()).Order().ElementAt((int)prior.Alpha - 1);
}
