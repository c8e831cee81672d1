using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Reasons;

/// <summary>
/// The mid-p tail of T = log P(answers | candidate) / P(answers | broad), over answers drawn from the candidate to the same traits. Exact where few
/// answers are possible; else by simulation that stops as soon as the tail is plainly large (Besag and Clifford 1991, sequential Monte Carlo p-values).
/// </summary>
public static class TypicalityFinder
{
    private const int ExactUpTo = 512;
    private const int MostDraws = 2000;
    private const int MostDrawsWithout = 400;
    private const int EnoughBelow = 20;

    /// <summary>Typicality of the answers under one candidate. The same input gives the same output.</summary>
    /// <param name="candidate">Candidate id, usually the likeliest one.</param>
    /// <returns>Null when the guide has no such candidate.</returns>
    public static Typicality? Of(CompiledGuide guide, Evidence evidence, Prior prior, string candidate)
    {
        var c = guide.CandidateIndex(candidate);
        if (c < 0) return null;
        if (evidence.Traits.Length == 0) return new Typicality(candidate, 1, true, null, null);
        var outcomes = Outcomes(guide, evidence, prior, c);
        var weights = WeightsOf(guide, c);
        var (tail, isExact) = Tail(outcomes, weights, without: -1, MostDraws);
        if (tail >= Typicality.OrdinaryFrom || outcomes.Length < 2) return new Typicality(candidate, tail, isExact, null, null);
        var best = -1;
        var bestTail = Typicality.OrdinaryFrom;
        for (var t = 0; t < outcomes.Length; t++)
        {
            var (without, _) = Tail(outcomes, weights, t, MostDrawsWithout);
            if (without >= bestTail && (best < 0 || without > bestTail)) (best, bestTail) = (t, without);
        }

        return new Typicality(candidate, tail, isExact, best < 0 ? null : outcomes[best].Trait, best < 0 ? null : bestTail);
    }

    private static double[] WeightsOf(CompiledGuide guide, int candidate)
    {
        var weights = new double[guide.FirstForm[candidate + 1] - guide.FirstForm[candidate]];
        for (var i = 0; i < weights.Length; i++) weights[i] = guide.Forms[guide.FirstForm[candidate] + i].Weight;
        return weights;
    }

    private static TraitOutcomes[] Outcomes(CompiledGuide guide, Evidence evidence, Prior prior, int candidate)
    {
        var weights = new double[guide.Stride];
        PriorMass.FillBase(guide, prior, weights);
        var outcomes = new TraitOutcomes[evidence.Traits.Length];
        for (var t = 0; t < outcomes.Length; t++) outcomes[t] = TraitOutcomes.Of(guide, evidence, evidence.Traits[t], candidate, weights);
        return outcomes;
    }

    private static (double Tail, bool IsExact) Tail(TraitOutcomes[] traits, double[] weights, int without, int draws)
    {
        var all = 1L;
        for (var t = 0; t < traits.Length && all <= ExactUpTo; t++)
        {
            if (t != without) all *= traits[t].Count;
        }

        var chosen = new int[traits.Length];
        var product = new double[weights.Length];
        var (seen, _) = Statistic(traits, weights, chosen, without, product);
        return all <= ExactUpTo
            ? (Exact(traits, weights, without, (int)all, seen, product), true)
            : (Simulated(traits, weights, without, draws, seen, product), false);
    }

    private static double Exact(TraitOutcomes[] traits, double[] weights, int without, int all, double seen, double[] product)
    {
        var chosen = new int[traits.Length];
        var tail = 0.0;
        for (var o = 0; o < all; o++)
        {
            var rest = o;
            for (var t = 0; t < traits.Length; t++)
            {
                if (t == without) continue;
                chosen[t] = rest % traits[t].Count;
                rest /= traits[t].Count;
            }

            var (statistic, probability) = Statistic(traits, weights, chosen, without, product);
            tail += probability * Below(statistic, seen);
        }

        return Math.Min(1, tail);
    }

    private static double Simulated(TraitOutcomes[] traits, double[] weights, int without, int draws, double seen, double[] product)
    {
        var random = new SeededDraws(0x5EED_0F_9A7CUL);
        var chosen = new int[traits.Length];
        var below = 0.0;
        for (var n = 1; n <= draws; n++)
        {
            var form = Draw(weights, 0, 1, weights.Length, ref random);
            for (var t = 0; t < traits.Length; t++)
            {
                if (t != without) chosen[t] = Draw(traits[t].Probability, form, weights.Length, traits[t].Count, ref random);
            }

            below += Below(Statistic(traits, weights, chosen, without, product).Statistic, seen);
            if (below >= EnoughBelow) return below / n;
        }

        return below / draws;
    }

    /// <summary>1 where a draw fits worse than what was seen, a half where it fits the same (mid-p, Lancaster 1961).</summary>
    private static double Below(double statistic, double seen) =>
        Math.Abs(statistic - seen) <= 1e-9 * Math.Max(1, Math.Abs(seen)) ? 0.5 : statistic < seen ? 1 : 0;

    private static (double Statistic, double Probability) Statistic(TraitOutcomes[] traits, double[] weights, int[] chosen, int without, double[] product)
    {
        weights.CopyTo(product, 0);
        var log = 0.0;
        for (var t = 0; t < traits.Length; t++)
        {
            if (t == without) continue;
            var row = traits[t].Probability.AsSpan(chosen[t] * weights.Length, weights.Length);
            for (var f = 0; f < row.Length; f++) product[f] *= row[f];
            log -= traits[t].LogBroad[chosen[t]];
        }

        var sum = 0.0;
        foreach (var p in product) sum += p;
        return (log + Math.Log(Math.Max(sum, 1e-300)), sum);
    }

    private static int Draw(double[] shares, int first, int step, int count, ref SeededDraws random)
    {
        var u = random.Next();
        var i = 0;
        for (; i < count - 1; i++)
        {
            u -= shares[first + (i * step)];
            if (u < 0) break;
        }

        return i;
    }
}
