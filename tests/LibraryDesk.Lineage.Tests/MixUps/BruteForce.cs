using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.MixUps;

/// <summary>The same question answered the slow way: every fate of every packet, every plant off or sound, and the share on a fine grid.</summary>
internal static class BruteForce
{
    private const int Grid = 100;

    public static double[] Posterior(LineageGraph graph, IReadOnlyList<TestedPlant> plants, IReadOnlyList<Cause> causes, IReadOnlyCollection<Packet> packets)
    {
        var known = new Dictionary<(NodeId, NodeId), double>();
        var weights = new List<double> { Weight([]) };
        for (var one = 0; one < causes.Count; one++)
        {
            weights.Add(Weight([one]));
            for (var other = one + 1; other < causes.Count; other++) weights.Add(Weight([one, other]));
        }

        return weights.Select(weight => weight / weights.Sum()).ToArray();

        double Weight(int[] chosen)
        {
            var prior = 1.0;
            for (var cause = 0; cause < causes.Count; cause++) prior *= chosen.Contains(cause) ? causes[cause].Prior : 1 - causes[cause].Prior;
            return prior * Integrate(chosen, []);
        }

        double Integrate(int[] chosen, double[] phi)
        {
            if (phi.Length == chosen.Length) return Given(chosen, phi);
            var share = causes[chosen[phi.Length]].Share;
            if (share.IsAll) return Integrate(chosen, [.. phi, 1.0]);
            var (sum, mass) = (0.0, 0.0);
            for (var at = 0; at < Grid; at++)
            {
                var x = (at + 0.5) / Grid;
                var density = Math.Pow(x, share.Alpha - 1) * Math.Pow(1 - x, share.Beta - 1);
                mass += density;
                sum += density * Integrate(chosen, [.. phi, x]);
            }

            return sum / mass;
        }

        double Given(int[] chosen, double[] phi)
        {
            var fates = chosen.SelectMany((cause, at) => causes[cause].Kind == CauseKind.SwappedAtPacking
                ? packets.Where(packet => packet.Packing == causes[cause].Packing).Select(packet => (At: at, packet.Id.Node))
                : []).ToArray();
            var sum = 0.0;
            for (var way = 0; way < 1 << fates.Length; way++)
            {
                var probability = 1.0;
                for (var fate = 0; fate < fates.Length; fate++) probability *= (way >> fate & 1) == 1 ? phi[fates[fate].At] : 1 - phi[fates[fate].At];
                foreach (var plant in plants)
                {
                    var (sound, off) = (1.0, 0.0);
                    for (var at = 0; at < chosen.Length; at++)
                    {
                        var cause = causes[chosen[at]];
                        var share = cause.Kind switch
                        {
                            CauseKind.SwappedAtPacking => fates.Select((fate, bit) => fate.At == at && (way >> bit & 1) == 1 ? Part(fate.Node, plant.From) : 0).Sum(),
                            CauseKind.LabelLost => plant.From == cause.Node ? phi[at] : 0,
                            _ => phi[at] * Part(cause.Node, plant.From),
                        };
                        off += sound * share * plant.OffBy(cause.Kind);
                        sound *= 1 - share;
                    }

                    probability *= (sound * plant.IfName) + off;
                }

                sum += probability;
            }

            return sum;
        }

        // The sum over all ways down from one node to another of the product of shares.
        double Part(NodeId from, NodeId to)
        {
            if (from == to) return 1;
            if (!known.TryGetValue((from, to), out var part)) known[(from, to)] = part = graph.Above(to).Sum(edge => edge.Share * Part(from, edge.Parent));
            return part;
        }
    }
}
