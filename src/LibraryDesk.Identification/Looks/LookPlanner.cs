using System.Globalization;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Looks;

/// <summary>Finds the look that is expected to tell most for its effort.</summary>
public static class LookPlanner
{
    /// <summary>Looks expected to tell less than this many bits are not worth naming.</summary>
    private const double LeastBits = 1e-4;

    /// <summary>Probability that one shown band of a measured trait should hold at least.</summary>
    private const double BandShare = 0.2;

    [ThreadStatic]
    private static double[]? _scratch;

    [ThreadStatic]
    private static double[]? _row;

    [ThreadStatic]
    private static Shortlist? _now;

    [ThreadStatic]
    private static Shortlist? _later;

    /// <summary>Plans the next look. Looks that tie are parted by what they leave for the look after, see <see cref="LookAhead"/>.</summary>
    /// <param name="partsPresent">Ids of the parts the plant carries now; null takes all as present.</param>
    /// <param name="most">How many looks to name in each list; 0 or more.</param>
    /// <param name="withOutlooks">False leaves <see cref="NextLook.Outlooks"/> empty, for batches that do not show them.</param>
    public static LookPlan Plan(CompiledGuide guide, Evidence evidence, Prior prior, IReadOnlySet<string>? partsPresent = null, int most = 5, bool withOutlooks = true)
    {
        var belief = Belief.Of(guide, evidence, prior);
        var now = Shortlist.Empty(ref _now, Math.Max(most, LookAhead.SecondSteps));
        var later = Shortlist.Empty(ref _later, most);
        foreach (var trait in guide.Traits)
        {
            if (!trait.Trait.Asked || FindSecond(belief, evidence, trait, out var second)) continue;
            var bits = ForecastOf(belief, trait, prior, second).Bits();
            if (bits < LeastBits) continue;
            var list = partsPresent is null || partsPresent.Contains(trait.Trait.Part) ? now : later;
            list.Offer(trait, second, bits, bits / EffortOf(trait.Trait));
        }

        if (most > 0) LookAhead.Settle(belief, prior, now);
        now.Cut(most);
        return new LookPlan(Describe(belief, prior, now, withOutlooks), Describe(belief, prior, later, withOutlooks));
    }

    /// <summary>The looks that best part two candidates, whatever the odds of the rest.</summary>
    /// <param name="partsPresent">Ids of the parts the plant carries now; null takes all as present. Other traits are left out.</param>
    public static IReadOnlyList<NextLook> TellApart(CompiledGuide guide, Evidence evidence, Prior prior, string candidateA, string candidateB, IReadOnlySet<string>? partsPresent = null, int most = 5)
    {
        var a = guide.CandidateIndex(candidateA);
        var b = guide.CandidateIndex(candidateB);
        if (a < 0 || b < 0 || a == b) return [];
        var belief = Belief.Of(guide, evidence, prior);
        var list = Shortlist.Empty(ref _now, most);
        foreach (var trait in guide.Traits)
        {
            if (!trait.Trait.Asked || (partsPresent is not null && !partsPresent.Contains(trait.Trait.Part))) continue;
            if (FindSecond(belief, evidence, trait, out var second)) continue;
            var bits = ForecastOf(belief, trait, prior, second).BitsBetween(a, b);
            if (bits >= LeastBits) list.Offer(trait, second, bits, bits / EffortOf(trait.Trait));
        }

        return Describe(belief, prior, list);
    }

    internal static double EffortOf(Trait trait) => trait.Minutes * trait.Effort switch { Effort.Cut => 2, Effort.Touch => 1.25, _ => 1 };

    /// <summary>True where the trait was answered well enough; else gives the second look, or null where it was not answered at all.</summary>
    private static bool FindSecond(Belief belief, Evidence evidence, CompiledTrait trait, out SecondLook? second)
    {
        second = null;
        foreach (var answered in evidence.Traits)
        {
            if (answered.Trait != trait) continue;
            if (!answered.IsDoubtful) return true;
            second = SecondLook.Of(belief, answered);
            return false;
        }

        return false;
    }

    private static Forecast ForecastOf(Belief belief, CompiledTrait trait, Prior prior, SecondLook? second)
    {
        var need = Forecast.ScratchFor(trait, belief.Guide);
        if (_scratch is null || _scratch.Length < need) _scratch = new double[Math.Max(256, need)];
        return second is null ? Forecast.First(belief, trait, prior, _scratch) : Forecast.Again(belief, trait, prior, second, _scratch);
    }

    private static NextLook[] Describe(Belief belief, Prior prior, Shortlist list, bool withOutlooks = true)
    {
        if (list.Count == 0) return [];
        var looks = new NextLook[list.Count];
        for (var i = 0; i < looks.Length; i++)
        {
            var (trait, second, bits, perEffort) = list[i];
            var t = trait.Trait;
            IReadOnlyList<AnswerOutlook> outlooks = withOutlooks ? Outlooks(belief, trait, ForecastOf(belief, trait, prior, second)) : [];
            looks[i] = new NextLook(t.Id, t.Name, t.Question, t.Part, t.Effort, t.Minutes, bits, perEffort, second is not null, outlooks);
        }

        return looks;
    }

    private static List<AnswerOutlook> Outlooks(Belief belief, CompiledTrait trait, Forecast forecast)
    {
        var outlooks = new List<AnswerOutlook>(trait.Scale is null ? trait.States : 6);
        if (_row is null || _row.Length < belief.Guide.Stride) _row = new double[belief.Guide.Stride];
        if (trait.Scale is null)
        {
            for (var y = 0; y < trait.Answers; y++)
            {
                var state = trait.Trait.States[y];
                outlooks.Add(Outlook(belief, forecast, y, y + 1, state.Id, state.Name, null, null));
            }

            return outlooks;
        }

        forecast.Bits();
        var first = 0;
        while (first < trait.Answers)
        {
            var end = first;
            var share = 0.0;
            while (end < trait.Answers && (share < BandShare || RestOf(forecast, end) < BandShare)) share += forecast.Answers[end++];
            var low = first == 0 ? (double?)null : Edge(trait.Scale, first);
            var high = end == trait.Answers ? (double?)null : Edge(trait.Scale, end);
            outlooks.Add(Outlook(belief, forecast, first, end, null, BandLabel(low, high, trait.Trait.Unit!), low, high));
            first = end;
        }

        return outlooks;
    }

    private static double RestOf(Forecast forecast, int from)
    {
        var rest = 0.0;
        foreach (var share in forecast.Answers[from..]) rest += share;
        return rest;
    }

    private static double Edge(MeasuredScale scale, int answerBin) => Math.Exp(scale.EdgeLog(answerBin * (MeasuredScale.Bins / MeasuredScale.AnswerBins)));

    private static string BandLabel(double? low, double? high, string unit)
    {
        static double Shown(double value) => Math.Round(value, value < 10 ? 1 : 0, MidpointRounding.AwayFromZero);
        var invariant = CultureInfo.InvariantCulture;
        if (low is null) return high is null ? "any" : string.Create(invariant, $"under {Shown(high.Value):0.#} {unit}");
        return high is null
            ? string.Create(invariant, $"over {Shown(low.Value):0.#} {unit}")
            : string.Create(invariant, $"{Shown(low.Value):0.#} to {Shown(high.Value):0.#} {unit}");
    }

    private static AnswerOutlook Outlook(Belief belief, Forecast forecast, int first, int end, string? state, string label, double? low, double? high)
    {
        var (leader, mass, all) = forecast.LeaderAfter(first, end, _row.AsSpan(0, belief.Guide.Stride));
        return new AnswerOutlook(state, label, low, high, all, belief.Guide.Guide.Candidates[leader].Id, all > 0 ? mass / all : 0);
    }
}
