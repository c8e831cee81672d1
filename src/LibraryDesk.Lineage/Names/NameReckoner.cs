using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Names;

/// <summary>
/// Reckons how sure a name is. Swaps: the product of what could have gone wrong on the way. Purity: blends mix it by seed share, crossing
/// lowers it, roguing with detection d raises it to rho / (rho + (1 - rho)(1 - d)), and checks update it (beta-binomial).
/// </summary>
public static class NameReckoner
{
    /// <summary>The confidence in the name of a node. All its ancestors must be in the graph.</summary>
    public static NameConfidence Reckon(LineageGraph graph, NodeId node, NameEvidence evidence, RateTable rates)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(rates);
        var known = new Dictionary<NodeId, Belief>();
        var factors = new List<NameFactor>();
        foreach (var step in graph.Ancestors(node).Append(graph[node]))
        {
            var walk = new Walk(step.Id, rates, factors);
            var belief = step.Kind switch
            {
                NodeKind.Accession => walk.Arrive(evidence.Sources.GetValueOrDefault(step.Id, SeedSource.Unknown)),
                NodeKind.Packet => walk.Pack(known[graph.Above(step.Id)[0].Parent]),
                NodeKind.GrowOut => walk.Grow(known[graph.Above(step.Id)[0].Parent], evidence.Growings.GetValueOrDefault(step.Id, GrowOutFacts.NotTold), evidence),
                _ => walk.Make(graph.Above(step.Id), known, evidence.UnderOtherNames),
            };
            if (evidence.Determined.TryGetValue(step.Id, out var plants)) belief = walk.Determine(belief, plants.Fits, plants.Off);
            known[step.Id] = belief;
        }

        return new(node, known[node].NoSwap, known[node].Purity, factors);
    }

    /// <summary>The share of off-type pollen that gets through.</summary>
    internal static string OutcrossRate(Isolation isolation) => isolation switch
    {
        Isolation.Distance => RateTable.OutcrossDistance,
        Isolation.Time => RateTable.OutcrossTime,
        Isolation.Caged => RateTable.OutcrossCaged,
        Isolation.Bagged => RateTable.OutcrossBagged,
        Isolation.HandPollinated => RateTable.OutcrossHand,
        _ => RateTable.OutcrossOpen,
    };

    private readonly record struct Belief(double NoSwap, PurityBelief Purity);

    private sealed class Walk(NodeId node, RateTable rates, List<NameFactor> factors)
    {
        public Belief Arrive(SeedSource source)
        {
            var id = source switch
            {
                SeedSource.Donor => RateTable.DonorWrong,
                SeedSource.SwapTable => RateTable.LabelWrong,
                SeedSource.Trade => RateTable.TradeWrong,
                SeedSource.Library => RateTable.LibraryWrong,
                _ => RateTable.UnknownWrong,
            };
            var purity = new PurityBelief(rates[RateTable.StartPurity].Value, rates[RateTable.PurityWeight].Value);
            return Note(NameFactorKind.Arrival, id, rates[id].Value, new(1 - rates[id].Value, purity));
        }

        public Belief Make(IReadOnlyList<LineageEdge> parts, Dictionary<NodeId, Belief> known, IReadOnlySet<NodeId> underOtherNames)
        {
            // A lot whose source is not in the slice stands for itself, as if nobody could account for it.
            if (parts.Count == 0) return Arrive(SeedSource.Unknown);
            if (parts.Count == 1) return known[parts[0].Parent];
            var (noSwap, mean, weight) = (0.0, 0.0, double.PositiveInfinity);
            foreach (var part in parts)
            {
                var from = known[part.Parent];
                var purity = underOtherNames.Contains(part.Parent) ? 0 : from.Purity.Mean;
                noSwap += part.Share * from.NoSwap;
                mean += part.Share * purity;

                // A blend is known no better than its least known part.
                weight = Math.Min(weight, from.Purity.Weight);
                factors.Add(new(node, NameFactorKind.Blend, null, part.Share, from.NoSwap, purity));
            }

            return new(noSwap, new(mean, weight));
        }

        public Belief Pack(Belief lot)
        {
            var rate = rates[RateTable.PackingSwap].Value;
            return Note(NameFactorKind.Packing, RateTable.PackingSwap, rate, lot with { NoSwap = lot.NoSwap * (1 - rate) });
        }

        public Belief Grow(Belief sown, GrowOutFacts facts, NameEvidence evidence)
        {
            var swap = rates[RateTable.GrowOutSwap].Value;
            var belief = Note(NameFactorKind.GrowOut, RateTable.GrowOutSwap, swap, sown with { NoSwap = sown.NoSwap * (1 - swap) });
            if (evidence.IsHybrid)
            {
                var off = rates[RateTable.HybridOff].Value;
                belief = Note(NameFactorKind.Hybrid, RateTable.HybridOff, off, Purer(belief, belief.Purity.Mean * (1 - off)));
            }

            if (facts.OffTypesSeen is { } seen && facts.PlantsGrown is { } plants and > 0)
            {
                belief = Note(NameFactorKind.Check, null, (double)(plants - seen) / plants, belief with { Purity = belief.Purity.After(plants, seen) });
            }

            if (facts.OffTypesRemoved is > 0)
            {
                var detection = rates[RateTable.RogueDetection].Value;
                var rho = belief.Purity.Mean;
                belief = Note(NameFactorKind.Roguing, RateTable.RogueDetection, detection, Purer(belief, rho / (rho + ((1 - rho) * (1 - detection)))));
            }

            // Nothing else in flower: nothing to cross with. Not told counts as something in flower.
            if (facts.OthersInFlower == false) return belief;
            var id = OutcrossRate(facts.Isolation);
            var crossed = id == RateTable.OutcrossOpen ? evidence.OutcrossingShare ?? rates[id].Value : rates[id].Value;
            return Note(NameFactorKind.Crossing, id, crossed, Purer(belief, belief.Purity.Mean * (1 - crossed)));
        }

        public Belief Determine(Belief belief, int fits, int off)
        {
            if (fits + off == 0) return belief;

            // Bayes on the swap: a swapped lot still gives plants that fit now and then; a sound one gives off-types by its impurity.
            var anyway = rates[RateTable.FitsAnyway].Value;
            var slip = rates[RateTable.TestSlip].Value;
            var fitIfSound = Math.Clamp((belief.Purity.Mean * (1 - slip)) + ((1 - belief.Purity.Mean) * anyway), 1e-9, 1 - 1e-9);
            var sound = Math.Log(belief.NoSwap) + (fits * Math.Log(fitIfSound)) + (off * Math.Log(1 - fitIfSound));
            var swapped = Math.Log(1 - belief.NoSwap) + (fits * Math.Log(anyway)) + (off * Math.Log(1 - anyway));
            var noSwap = 1 / (1 + Math.Exp(swapped - sound));
            return Note(NameFactorKind.Determined, RateTable.FitsAnyway, (double)fits / (fits + off), new(noSwap, belief.Purity.After(fits + off, off)));
        }

        private static Belief Purer(Belief belief, double mean) => belief with { Purity = belief.Purity with { Mean = mean } };

        private Belief Note(NameFactorKind kind, string? id, double rate, Belief after)
        {
            factors.Add(new(node, kind, id, rate, after.NoSwap, after.Purity.Mean));
            return after;
        }
    }
}
