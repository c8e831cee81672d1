using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Looks;

/// <summary>
/// Parts looks that tie at one step by what they leave for the next: two traits may tell equally much, but after one of them a third trait tells more.
/// The value of a look is then the bits of both steps over the effort of both, the second step being the best for each answer.
/// </summary>
internal static class LookAhead
{
    /// <summary>How many of the best looks at one step are thought of as a second step. A look that tells little now seldom comes to tell most.</summary>
    public const int SecondSteps = 8;

    /// <summary>Looks whose value per effort lies within this share of the best one tie with it.</summary>
    private const double TieShare = 0.03;

    /// <summary>At most so many tied looks are followed; each costs a plan for every answer.</summary>
    private const int MostTied = 3;

    /// <summary>Answers less likely than this are not followed.</summary>
    private const double LeastShare = 0.01;

    [ThreadStatic]
    private static double[]? _first;

    [ThreadStatic]
    private static double[]? _second;

    /// <summary>Reorders the tied head of a list, in place.</summary>
    public static void Settle(Belief belief, Prior prior, Shortlist list)
    {
        var tied = 0;
        while (tied < list.Count && tied < MostTied && list[tied].PerEffort >= list[0].PerEffort * (1 - TieShare)) tied++;
        if (tied < 2) return;
        Span<double> values = stackalloc double[tied];
        for (var i = 0; i < tied; i++) values[i] = list[i].Second is null ? TwoSteps(belief, prior, list, i) : 0;
        list.Reorder(values);
    }

    private static double TwoSteps(Belief belief, Prior prior, Shortlist list, int at)
    {
        var (first, _, bits, _) = list[at];
        var forecast = Forecast.First(belief, first, prior, Scratch(ref _first, first, belief.Guide));
        forecast.Bits();
        var expected = 0.0;
        for (var y = 0; y < first.Answers; y++)
        {
            var share = forecast.Answers[y];
            if (share >= LeastShare) expected += share * BestSecond(belief.After(forecast, y), prior, list, at, bits);
        }

        return expected;
    }

    private static double BestSecond(Belief after, Prior prior, Shortlist list, int at, double bits)
    {
        var effort = LookPlanner.EffortOf(list[at].Trait.Trait);
        var best = 0.0;
        for (var i = 0; i < list.Count; i++)
        {
            var (second, again, _, _) = list[i];
            if (i == at || again is not null) continue;
            var more = Forecast.First(after, second, prior, Scratch(ref _second, second, after.Guide)).Bits();
            best = Math.Max(best, (bits + more) / (effort + LookPlanner.EffortOf(second.Trait)));
        }

        return best;
    }

    private static double[] Scratch(ref double[]? scratch, CompiledTrait trait, CompiledGuide guide)
    {
        var need = Forecast.ScratchFor(trait, guide);
        if (scratch is null || scratch.Length < need) scratch = new double[need];
        return scratch;
    }
}
