using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Looks;

/// <summary>
/// Parts looks that tie at one step by what they leave for the next: two traits may tell equally much, but after one of them a third trait tells more.
/// The value of a look is then the bits of both steps over the effort of both, the second step being the best for each answer.
/// </summary>
internal static class LookAhead
{
    /// <summary>Looks whose value per effort lies within this share of the best one tie with it.</summary>
    private const double TieShare = 0.03;

    /// <summary>At most so many tied looks are followed; each costs a plan for every answer.</summary>
    private const int MostTied = 3;

    /// <summary>Reorders the tied head of a list, in place.</summary>
    public static void Settle(Belief belief, Prior prior, Shortlist list, IReadOnlyList<CompiledTrait> open)
    {
        var tied = 0;
        while (tied < list.Count && tied < MostTied && list[tied].PerEffort >= list[0].PerEffort * (1 - TieShare)) tied++;
        if (tied < 2) return;
        var values = new double[tied];
        for (var i = 0; i < tied; i++) values[i] = list[i].Second is null ? TwoSteps(belief, prior, list[i].Trait, list[i].Bits, open) : 0;
        list.Reorder(values);
    }

    private static double TwoSteps(Belief belief, Prior prior, CompiledTrait first, double bits, IReadOnlyList<CompiledTrait> open)
    {
        var scratch = new double[Math.Max(Forecast.ScratchFor(first), open.Max(Forecast.ScratchFor))];
        var forecast = Forecast.First(belief, first, prior, new double[Forecast.ScratchFor(first)]);
        forecast.Bits();
        var expected = 0.0;
        for (var y = 0; y < first.Answers; y++)
        {
            var share = forecast.Answers[y];
            if (share < 1e-3) continue;
            var after = belief.After(forecast, y);
            var best = 0.0;
            foreach (var second in open)
            {
                if (second == first) continue;
                var rate = (bits + Forecast.First(after, second, prior, scratch).Bits()) / (LookPlanner.EffortOf(first.Trait) + LookPlanner.EffortOf(second.Trait));
                best = Math.Max(best, rate);
            }

            expected += share * best;
        }

        return expected;
    }
}
