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

    /// <summary>Columns taken at a time: a few rows of so many stay in the processor's nearest cache while every pair of them is multiplied.</summary>
    private const int Chunk = 512;

    [ThreadStatic]
    private static double[]? _first;

    [ThreadStatic]
    private static double[]? _second;

    [ThreadStatic]
    private static double[]? _sums;

    [ThreadStatic]
    private static List<Belief>? _afters;

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
        var afters = _afters ??= [];
        Span<double> shares = stackalloc double[first.Answers];
        var followed = 0;
        for (var y = 0; y < first.Answers; y++)
        {
            if (forecast.Answers[y] < LeastShare) continue;
            if (afters.Count == followed) afters.Add(new Belief());
            belief.FillAfter(forecast, y, afters[followed]);
            shares[followed++] = forecast.Answers[y];
        }

        if (followed == 0) return 0;
        Span<double> best = stackalloc double[followed];
        best.Clear();
        var sums = SumsOf(afters, followed, list, at);
        var effort = LookPlanner.EffortOf(first.Trait);
        for (var i = 0; i < list.Count; i++)
        {
            var (second, again, _, _) = list[i];
            if (i == at || again is not null) continue;
            var length = belief.RowCount * (second.Answers + 1);
            for (var a = 0; a < followed; a++)
            {
                var more = Forecast.First(afters[a], second, prior, Scratch(ref _second, second, belief.Guide)).Bits(sums[..length]);
                sums = sums[length..];
                best[a] = Math.Max(best[a], (bits + more) / (effort + LookPlanner.EffortOf(second.Trait)));
            }
        }

        var expected = 0.0;
        for (var a = 0; a < followed; a++) expected += shares[a] * best[a];
        return expected;
    }

    /// <summary>What <see cref="Forecast.Bits(ReadOnlySpan{double})"/> takes, for every second step, every answer followed and every row, in this order.</summary>
    private static ReadOnlySpan<double> SumsOf(List<Belief> afters, int followed, Shortlist list, int at)
    {
        var rows = afters[0].RowCount;
        var need = 0;
        for (var i = 0; i < list.Count; i++) need += followed * rows * (list[i].Trait.Answers + 1);
        if (_sums is null || _sums.Length < need) _sums = new double[need];
        var all = _sums.AsSpan(0, need);
        all.Clear();
        var stride = afters[0].Guide.Stride;
        for (var start = 0; start < stride; start += Chunk)
        {
            var length = Math.Min(Chunk, stride - start);
            var sums = all;
            for (var i = 0; i < list.Count; i++)
            {
                var (second, again, _, _) = list[i];
                if (i == at || again is not null) continue;
                for (var a = 0; a < followed; a++)
                {
                    for (var r = 0; r < rows; r++)
                    {
                        Forecast.AddSums(afters[a].Row(r).Slice(start, length), second, start, sums);
                        sums = sums[(second.Answers + 1)..];
                    }
                }
            }
        }

        return all;
    }

    private static double[] Scratch(ref double[]? scratch, CompiledTrait trait, CompiledGuide guide)
    {
        var need = Forecast.ScratchFor(trait, guide);
        if (scratch is null || scratch.Length < need) scratch = new double[need];
        return scratch;
    }
}
