using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>
/// Finds where a name and its seed parted. Each cause happened or did not, on its own; nothing, every single cause and every pair are
/// enumerated, and weighed by how well they foretell what the plants showed. Three causes at once are left out.
/// </summary>
public sealed class MixUpFinder
{
    /// <summary>For so many of the likeliest explanations, it is said which plants speak for them.</summary>
    public const int ExplanationsOpened = 8;

    private readonly LineageGraph _graph;
    private readonly IReadOnlyList<TestedPlant> _plants;
    private readonly IReadOnlyList<Cause> _causes;
    private readonly Dictionary<long, NodeId[]> _packings;
    private readonly Likelihood _likelihood;
    private readonly List<(int[] Causes, double LogPrior)> _explanations = [];

    /// <param name="graph">The lineage; every ancestor of every plant must be in it.</param>
    /// <param name="plants">The plants that were looked at.</param>
    /// <param name="causes">What may have happened: <see cref="CauseList.Of"/>.</param>
    /// <param name="packets">The packets of the graph, for their packings.</param>
    public MixUpFinder(LineageGraph graph, IReadOnlyList<TestedPlant> plants, IReadOnlyList<Cause> causes, IEnumerable<Packet> packets)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(plants);
        ArgumentNullException.ThrowIfNull(causes);
        ArgumentNullException.ThrowIfNull(packets);
        foreach (var plant in plants)
        {
            if (plant.IfName is not (> 0 and <= 1) || plant.IfOff is not (> 0 and <= 1)) throw new ArgumentException("Likelihoods lie above 0 and at most at 1: a plant never rules a name out for good.", nameof(plants));
        }

        (_graph, _plants, _causes) = (graph, plants, causes);
        _packings = packets.GroupBy(packet => packet.Packing).ToDictionary(packing => packing.Key, packing => packing.Select(packet => packet.Id.Node).ToArray());
        var parts = plants.Select(plant => Reach.Parts(graph, plant.From)).ToArray();
        var reach = causes.Select(cause => plants.Select((plant, at) => Reach.Of(cause, plant, parts[at], _packings)).ToArray()).ToArray();
        _likelihood = new(plants, causes, reach);
        var none = causes.Sum(cause => Math.Log(1 - cause.Prior));
        double Odds(int cause) => Math.Log(causes[cause].Prior) - Math.Log(1 - causes[cause].Prior);
        _explanations.Add(([], none));
        for (var one = 0; one < causes.Count; one++)
        {
            _explanations.Add(([one], none + Odds(one)));
            for (var other = one + 1; other < causes.Count; other++) _explanations.Add(([one, other], none + Odds(one) + Odds(other)));
        }
    }

    /// <summary>Ranks what may have happened.</summary>
    public MixUpReport Find()
    {
        var posterior = Normal(_explanations.Select(explanation => explanation.LogPrior + _likelihood.Log(explanation.Causes)).ToArray());
        var byCause = new double[_causes.Count];
        for (var at = 0; at < posterior.Length; at++)
        {
            foreach (var cause in _explanations[at].Causes) byCause[cause] += posterior[at];
        }

        var explanations = Enumerable.Range(0, posterior.Length)
            .OrderByDescending(at => posterior[at]).ThenBy(at => at)
            .Select((at, rank) => new Explanation(_explanations[at].Causes.Select(cause => _causes[cause]).ToArray(), posterior[at], rank < ExplanationsOpened ? SpeaksFor(_explanations[at].Causes) : []))
            .ToArray();
        var causes = Enumerable.Range(0, byCause.Length).OrderByDescending(cause => byCause[cause]).ThenBy(cause => cause).Select(cause => (_causes[cause], byCause[cause])).ToArray();
        return new(explanations, causes, posterior[0], _likelihood.IsExact);
    }

    /// <summary>What to grow as a check: the nodes that would tell most about what happened, best first.</summary>
    /// <param name="candidates">Packets and lots that have seed left.</param>
    /// <param name="plants">How many plants would be grown; 1 to 20.</param>
    /// <param name="slip">The chance that one of them is judged wrongly; above 0, below a half.</param>
    public IReadOnlyList<NextCheck> NextChecks(IReadOnlyList<NodeId> candidates, int plants, double slip)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentOutOfRangeException.ThrowIfLessThan(plants, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(plants, 20);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(slip);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(slip, 0.5);
        var logs = _explanations.Select(explanation => explanation.LogPrior + _likelihood.Log(explanation.Causes)).ToArray();
        var posterior = Normal(logs);

        // What is left of the belief once 99 in 100 is covered moves no ranking.
        var (kept, belief) = Likeliest(posterior, 0.99);
        return candidates
            .Select(node => new NextCheck(node, plants, Information(node, plants, slip, kept, belief, logs)))
            .OrderByDescending(check => check.Bits).ThenBy(check => check.Node.Value)
            .ToArray();
    }

    /// <summary>
    /// The chance that one more plant of a node is what its name says, by all that the plants showed. For causes of its own, which no plant
    /// has tested, give the finder a plant of it that shows nothing: one with equal likelihoods.
    /// </summary>
    public double NextFits(NodeId node)
    {
        var logs = _explanations.Select(explanation => explanation.LogPrior + _likelihood.Log(explanation.Causes)).ToArray();
        var (kept, belief) = Likeliest(Normal(logs), 0.9999);
        var parts = Reach.Parts(_graph, node);
        var plant = new TestedPlant("", node, 1, 1, IsByBorrower: false);
        var more = new MorePlants(1, 0, cause => Reach.Of(cause, plant, parts, _packings));
        return kept.Select((at, place) => belief[place] * Math.Exp(_explanations[at].LogPrior + _likelihood.LogWith(_explanations[at].Causes, more)[0] - logs[at])).Sum();
    }

    private static (List<int> Kept, double[] Belief) Likeliest(double[] posterior, double cover)
    {
        var kept = new List<int>();
        var covered = 0.0;
        foreach (var at in Enumerable.Range(0, posterior.Length).OrderByDescending(at => posterior[at]))
        {
            if (covered > cover) break;
            kept.Add(at);
            covered += posterior[at];
        }

        return (kept, [.. kept.Select(at => posterior[at] / covered)]);
    }

    // Mutual information between what happened and how many plants come up off: sum over both of p log p(k given h) / p(k).
    private double Information(NodeId node, int count, double slip, List<int> kept, double[] belief, double[] logs)
    {
        var parts = Reach.Parts(_graph, node);
        var plant = new TestedPlant("", node, 1, 1, IsByBorrower: false);
        var more = new MorePlants(count, slip, cause => Reach.Of(cause, plant, parts, _packings));
        var given = kept.Select(at => _likelihood.LogWith(_explanations[at].Causes, more).Select(log => Math.Exp(_explanations[at].LogPrior + log - logs[at])).ToArray()).ToArray();
        var bits = 0.0;
        for (var off = 0; off <= count; off++)
        {
            var total = belief.Select((share, at) => share * given[at][off]).Sum();
            for (var at = 0; at < kept.Count; at++)
            {
                if (given[at][off] > 0) bits += belief[at] * given[at][off] * Math.Log2(given[at][off] / total);
            }
        }

        return Math.Max(0, bits);
    }

    private double[] SpeaksFor(int[] causes)
    {
        var (with, nothing) = (_likelihood.Log(causes), _likelihood.Log([]));
        return Enumerable.Range(0, _plants.Count)
            .Select(at => 10 / Math.Log(10) * (with - _likelihood.Log(causes, at) - (nothing - _likelihood.Log([], at))))
            .ToArray();
    }

    private static double[] Normal(double[] logs)
    {
        var most = logs.Max();
        var sum = logs.Sum(log => Math.Exp(log - most));
        return logs.Select(log => Math.Exp(log - most) / sum).ToArray();
    }
}
