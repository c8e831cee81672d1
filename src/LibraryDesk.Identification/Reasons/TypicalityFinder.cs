using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Reasons;

/// <summary>
/// The mid-p tail of T = P(answers | candidate) / P(answers | broad), over answers drawn from the candidate to the same traits. Exact where few
/// answers are possible; else by simulation that stops as soon as the tail is plainly large (Besag and Clifford 1991, sequential Monte Carlo p-values).
/// </summary>
public static class TypicalityFinder
{
    private const int ExactUpTo = 512;
    private const int MostDraws = 2000;
    private const int DrawsWithout = 400;
    private const int EnoughBelow = 20;

    /// <summary>Products of a few dozen numbers that are equal on paper differ by less than this share.</summary>
    private const double Rounding = 1e-9;

    [ThreadStatic]
    private static OutcomeSpace? _space;

    /// <summary>Typicality of the answers under one candidate. The same input gives the same output.</summary>
    /// <param name="candidate">Candidate id, usually the likeliest one.</param>
    /// <returns>Null when the guide has no such candidate.</returns>
    public static Typicality? Of(CompiledGuide guide, Evidence evidence, Prior prior, string candidate)
    {
        var c = guide.CandidateIndex(candidate);
        if (c < 0) return null;
        if (evidence.Traits.Length == 0) return new Typicality(candidate, 1, true, null, null);
        var space = _space ??= new OutcomeSpace();
        space.Fill(guide, evidence, Belief.Of(guide, evidence, prior).Base, c);
        var isExact = space.Outcomes <= ExactUpTo;
        var tail = isExact ? Exact(space) : Simulated(space);
        if (tail >= Typicality.OrdinaryFrom || space.Traits < 2) return new Typicality(candidate, tail, isExact, null, null);
        var (wrong, without) = Wrong(space, isExact);
        return new Typicality(candidate, tail, isExact, wrong < 0 ? null : space[wrong].Trait, wrong < 0 ? null : without);
    }

    private static double Exact(OutcomeSpace space)
    {
        var seen = space.Seen();
        var tail = 0.0;
        for (var o = 0; o < space.Outcomes; o++)
        {
            space.Choose(o);
            var statistic = space.Statistic();
            tail += space.Probability(statistic) * Below(statistic, seen);
        }

        return Math.Min(1, tail);
    }

    private static double Simulated(OutcomeSpace space)
    {
        var random = Draws();
        space.SumUp();
        var seen = space.Seen();
        var below = 0.0;
        for (var n = 1; n <= MostDraws; n++)
        {
            space.Draw(ref random);
            below += Below(space.Statistic(), seen);
            if (below >= EnoughBelow) return below / n;
        }

        return below / MostDraws;
    }

    /// <summary>The answer without which the case is ordinary, and most so, with the tail then; -1 where no single one would do.</summary>
    private static (int Trait, double Tail) Wrong(OutcomeSpace space, bool isExact)
    {
        Span<double> seen = stackalloc double[space.Traits];
        Span<double> statistics = stackalloc double[space.Traits];
        Span<double> tails = stackalloc double[space.Traits];
        tails.Clear();
        space.SeenWithout(seen);
        var random = Draws();
        var times = isExact ? (int)space.Outcomes : DrawsWithout;
        for (var n = 0; n < times; n++)
        {
            if (isExact) space.Choose(n);
            else space.Draw(ref random);
            var share = isExact ? space.Probability(space.Statistic()) : 1.0 / times;
            space.StatisticsWithout(statistics);
            for (var t = 0; t < tails.Length; t++) tails[t] += share * Below(statistics[t], seen[t]);
        }

        var best = -1;
        for (var t = 0; t < tails.Length; t++)
        {
            if (tails[t] >= Typicality.OrdinaryFrom && (best < 0 || tails[t] > tails[best])) best = t;
        }

        return best < 0 ? (-1, 0) : (best, Math.Min(1, tails[best]));
    }

    private static SeededDraws Draws() => new(0x5EED_0F_9A7CUL);

    /// <summary>1 where a draw fits worse than what was seen, a half where it fits the same but for rounding (mid-p, Lancaster 1961).</summary>
    private static double Below(double statistic, double seen) =>
        statistic < seen * (1 - Rounding) ? 1 : statistic <= seen * (1 + Rounding) ? 0.5 : 0;
}
