using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>Lists what may have gone wrong above a set of plants, with how likely each was beforehand.</summary>
public static class CauseList
{
    /// <summary>All causes upstream of at least one plant, in the order of the library's numbers.</summary>
    /// <param name="graph">The lineage; every ancestor of every plant must be in it.</param>
    /// <param name="plants">The plants.</param>
    /// <param name="packets">The packets of the graph, for their packings.</param>
    /// <param name="evidence">How accessions arrived, and what growers told.</param>
    /// <param name="rates">The table of rates.</param>
    public static IReadOnlyList<Cause> Of(LineageGraph graph, IReadOnlyList<TestedPlant> plants, IEnumerable<Packet> packets, NameEvidence evidence, RateTable rates)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(plants);
        ArgumentNullException.ThrowIfNull(packets);
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(rates);
        var packingOf = packets.ToDictionary(packet => packet.Id.Node, packet => (packet.Packing, packet.Lot));
        var above = plants.SelectMany(plant => graph.Ancestors(plant.From).Append(graph[plant.From])).DistinctBy(node => node.Id).OrderBy(node => node.Id.Value).ToArray();
        var causes = new List<Cause>();
        foreach (var node in above)
        {
            switch (node.Kind)
            {
                case NodeKind.Accession:
                    var wrong = ArrivalRate(evidence.Sources.GetValueOrDefault(node.Id, SeedSource.Unknown));
                    causes.Add(Make(CauseKind.ArrivedWrong, node.Id, null, wrong, rates, SharePrior.All));
                    causes.Add(Make(CauseKind.ArrivedMixed, node.Id, null, RateTable.DonorMixed, rates, SharePrior.Any));
                    break;
                case NodeKind.GrowOut:
                    causes.Add(Make(CauseKind.SwappedAtGrowOut, node.Id, null, RateTable.GrowOutSwap, rates, SharePrior.All));
                    var facts = evidence.Growings.GetValueOrDefault(node.Id, GrowOutFacts.NotTold);
                    if (facts.OthersInFlower != false) causes.Add(Crossing(node.Id, facts.Isolation, rates));
                    break;
                case NodeKind.Packet when packingOf.TryGetValue(node.Id, out var packing):
                    if (!causes.Exists(cause => cause.Packing == packing.Packing)) causes.Add(Make(CauseKind.SwappedAtPacking, packing.Lot.Node, packing.Packing, RateTable.PackingSwap, rates, SharePrior.Few));
                    break;
                default:
                    break;
            }
        }

        foreach (var packet in plants.Where(plant => plant.IsByBorrower && graph[plant.From].Kind == NodeKind.Packet).Select(plant => plant.From).Distinct())
        {
            causes.Add(Make(CauseKind.LabelLost, packet, null, RateTable.LabelLost, rates, SharePrior.Any));
        }

        return causes;
    }

    private static string ArrivalRate(SeedSource source) => source switch
    {
        SeedSource.Donor => RateTable.DonorWrong,
        SeedSource.SwapTable => RateTable.LabelWrong,
        SeedSource.Trade => RateTable.TradeWrong,
        SeedSource.Library => RateTable.LibraryWrong,
        _ => RateTable.UnknownWrong,
    };

    // Isolation that lets a tenth of the pollen through makes a showing cross a tenth as likely.
    private static Cause Crossing(NodeId node, Isolation isolation, RateTable rates)
    {
        var open = rates[RateTable.OutcrossOpen].Value;
        var through = open > 0 ? Math.Min(1, rates[NameReckoner.OutcrossRate(isolation)].Value / open) : 1;
        var prior = rates[RateTable.GrowOutCrossed].Value * through;
        return new(CauseKind.CrossedAtGrowOut, node, null, RateTable.GrowOutCrossed, Held(prior), SharePrior.Few);
    }

    private static Cause Make(CauseKind kind, NodeId node, long? packing, string rateId, RateTable rates, SharePrior share) =>
        new(kind, node, packing, rateId, Held(rates[rateId].Value), share);

    // A rate of 0 or 1 would close the question; what is looked for stays open.
    private static double Held(double prior) => Math.Clamp(prior, 1e-6, 0.95);
}
