using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Population;

/// <summary>One grow-out on the way to a lot, as the population figures see it.</summary>
/// <param name="Node">The grow-out.</param>
/// <param name="PlantsSavedFrom">N; null when nobody told, and then nothing is lost in the figures that was not known to be lost.</param>
/// <param name="EffectiveSize">Ne; null with N.</param>
public sealed record Generation(NodeId Node, int? PlantsSavedFrom, double? EffectiveSize);

/// <summary>What the lineage says about a lot as a population.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Founders">The part of each accession, by seed count; sums to 1.</param>
/// <param name="EffectiveFounders">As many equal accessions would be as diverse.</param>
/// <param name="Generations">Growings since accession, averaged over the seed.</param>
/// <param name="Line">All grow-outs above the lot, oldest first.</param>
/// <param name="HeterozygosityKept">1 less the mean coancestry that drift has made since accession, each accession taken as unrelated within and between: 0 to 1.</param>
/// <param name="HasGaps">True when a grow-out on the way did not tell its plants: then the figure is the best case.</param>
public sealed record LotPopulation(
    NodeId Lot,
    IReadOnlyDictionary<NodeId, double> Founders,
    double EffectiveFounders,
    double Generations,
    IReadOnlyList<Generation> Line,
    double HeterozygosityKept,
    bool HasGaps)
{
    /// <summary>
    /// Reckons the population facts of a node. Coancestry goes down the graph: a blend's is the sum of w_i w_j f_ij, a grow-out's
    /// f + (1 - f) / (2Ne). Along an unblended line, what is kept is the product of 1 - 1/(2Ne).
    /// </summary>
    /// <param name="graph">The lineage; every ancestor must be in it.</param>
    /// <param name="lot">The lot, or any node.</param>
    /// <param name="growings">What each grow-out's grower told; absent means nothing.</param>
    /// <param name="selfedShare">The share of seed that is selfed in this species, 0 to 1: the crop guide's figure; 0 when not known.</param>
    public static LotPopulation Of(LineageGraph graph, NodeId lot, IReadOnlyDictionary<NodeId, GrowOutFacts> growings, double selfedShare = 0)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(growings);
        var way = graph.Ancestors(lot).Append(graph[lot]).ToArray();
        var coancestry = new Dictionary<(NodeId, NodeId), double>();
        var generations = new Dictionary<NodeId, double>();
        var line = new List<Generation>();
        foreach (var node in way)
        {
            var above = graph.Above(node.Id);
            foreach (var earlier in way.TakeWhile(other => other.Id != node.Id))
            {
                Set(coancestry, node.Id, earlier.Id, above.Sum(edge => edge.Share * Get(coancestry, edge.Parent, earlier.Id)));
            }

            var within = above.Sum(one => above.Sum(other => one.Share * other.Share * Get(coancestry, one.Parent, other.Parent)));
            if (node.Kind == NodeKind.GrowOut)
            {
                var generation = Grown(node.Id, growings.GetValueOrDefault(node.Id), selfedShare);
                line.Add(generation);
                if (generation.EffectiveSize is { } size) within += (1 - within) / (2 * Math.Max(0.5, size));
            }

            Set(coancestry, node.Id, node.Id, within);
            generations[node.Id] = above.Sum(edge => edge.Share * generations[edge.Parent]) + (node.Kind == NodeKind.GrowOut ? 1 : 0);
        }

        var founders = graph.Founders(lot);
        return new(
            lot,
            founders,
            FounderFigures.EffectiveFounders(founders.Values),
            generations[lot],
            line,
            1 - Get(coancestry, lot, lot),
            line.Exists(generation => generation.PlantsSavedFrom is null));
    }

    private static Generation Grown(NodeId node, GrowOutFacts? facts, double selfedShare)
    {
        if (facts?.PlantsSavedFrom is not { } plants || plants < 1) return new(node, null, null);
        var size = EffectiveSize.FromVariance(plants, EffectiveSize.VarianceOf(facts.Harvest));
        return new(node, plants, EffectiveSize.WithSelfing(size, selfedShare));
    }

    private static double Get(Dictionary<(NodeId, NodeId), double> known, NodeId one, NodeId other) =>
        known.GetValueOrDefault(one.Value >= other.Value ? (one, other) : (other, one));

    private static void Set(Dictionary<(NodeId, NodeId), double> known, NodeId one, NodeId other, double value) =>
        known[one.Value >= other.Value ? (one, other) : (other, one)] = value;
}
