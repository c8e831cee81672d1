using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>Ranks candidates, forms and packets for one case.</summary>
public static class Ranker
{
    /// <summary>Decibans under which a packet no longer simply fits: the answers are about three times likelier from elsewhere.</summary>
    private const double FitsPoorlyBelow = -5;

    /// <summary>Decibans under which a packet does not fit: a hundred times likelier from elsewhere.</summary>
    private const double DoesNotFitBelow = -20;

    [ThreadStatic]
    private static double[]? _keysOfThread;

    [ThreadStatic]
    private static int[]? _orderOfThread;

    /// <summary>Odds of every candidate in play, given the answers and the prior. The same input gives the same output to the last bit.</summary>
    public static Ranking Rank(CompiledGuide guide, Evidence evidence, Prior prior)
    {
        var belief = Belief.Of(guide, evidence, prior);
        var candidates = Candidates(belief);
        return new Ranking(
            guide.Guide.Id,
            guide.Guide.Version,
            candidates,
            Forms(belief),
            belief.RowCount > 1 ? Packets(belief, prior.Origin!) : [],
            belief.RowMass(0),
            EntropyBits(candidates));
    }

    private static RankedCandidate[] Candidates(Belief belief)
    {
        var guide = belief.Guide;
        var baseRow = belief.Base;
        var total = belief.Total;
        var candidates = guide.Guide.Candidates;
        if (_keysOfThread is null || _keysOfThread.Length < candidates.Count)
        {
            _keysOfThread = new double[candidates.Count];
            _orderOfThread = new int[candidates.Count];
        }

        var (allKeys, order) = (_keysOfThread, _orderOfThread!);
        var count = 0;
        for (var c = 0; c < guide.FirstForm.Length - 1; c++)
        {
            if (!(baseRow[guide.FirstForm[c]] > 0)) continue;
            var p = 0.0;
            for (var f = guide.FirstForm[c]; f < guide.FirstForm[c + 1]; f++) p += total[f];
            allKeys[count] = -p;
            order[count++] = c;
        }

        var keys = allKeys.AsSpan(0, count);
        Order(keys, order.AsSpan(0, count), c => candidates[c].Id);
        foreach (ref var key in keys) key = -key;
        var odds = OddsInTwenty.Share(keys);
        var result = new RankedCandidate[count];
        for (var i = 0; i < count; i++)
        {
            var candidate = candidates[order[i]];
            result[i] = new RankedCandidate(candidate.Id, candidate.Name, candidate.Kind, keys[i], odds[i]);
        }

        return result;
    }

    private static FormRanking Forms(Belief belief)
    {
        var probabilities = belief.Total.ToArray();
        var baseRow = belief.Base;
        for (var f = 0; f < probabilities.Length; f++)
        {
            if (!(baseRow[f] > 0)) probabilities[f] = -1;
        }

        return new FormRanking(belief.Guide, probabilities);
    }

    private static RankedPacket[] Packets(Belief belief, Origin origin)
    {
        var decibans = new double[origin.Packets.Count];
        for (var k = 0; k < decibans.Length; k++) decibans[k] = 10 * Math.Log10(belief.RowEvidence(k + 1) / belief.RowEvidence(0));
        return [.. origin.Packets
            .Select((p, k) => new RankedPacket(p.Id, belief.RowMass(k + 1), FitOf(decibans[k]), decibans[k], origin.Packets.Where((o, j) => j != k && SamePrediction(o, p)).Any()))
            .OrderByDescending(p => p.Probability).ThenBy(p => p.Id, StringComparer.Ordinal)];
    }

    private static Fit FitOf(double decibans) =>
        decibans >= FitsPoorlyBelow ? Fit.Fits : decibans >= DoesNotFitBelow ? Fit.FitsPoorly : Fit.DoesNotFit;

    private static bool SamePrediction(PossiblePacket a, PossiblePacket b) =>
        a.OwnTraits.Count == 0 && b.OwnTraits.Count == 0
        && a.Shares.OrderBy(s => s.Candidate + "/" + s.Form, StringComparer.Ordinal).SequenceEqual(b.Shares.OrderBy(s => s.Candidate + "/" + s.Form, StringComparer.Ordinal));

    private static double EntropyBits(RankedCandidate[] candidates)
    {
        var entropy = 0.0;
        foreach (var c in candidates)
        {
            if (c.Probability > 0) entropy -= c.Probability * Math.Log2(c.Probability);
        }

        return Math.Max(0, entropy);
    }

    /// <summary>Sorts by key, and equal keys by id, so that the order of the guide file never shows.</summary>
    internal static void Order(Span<double> keys, Span<int> items, Func<int, string> id)
    {
        keys.Sort(items);
        for (var start = 0; start < keys.Length;)
        {
            var end = start + 1;
            while (end < keys.Length && keys[end] == keys[start]) end++;
            if (end - start > 1) items[start..end].Sort((a, b) => string.CompareOrdinal(id(a), id(b)));
            start = end;
        }
    }
}
