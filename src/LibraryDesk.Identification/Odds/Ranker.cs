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
        var total = belief.Total;
        var count = 0;
        for (var c = 0; c < guide.Guide.Candidates.Count; c++)
        {
            if (belief.Base[guide.FirstForm[c]] > 0) count++;
        }

        var keys = new double[count];
        var ranked = new Candidate[count];
        var i = 0;
        for (var c = 0; c < guide.Guide.Candidates.Count; c++)
        {
            if (!(belief.Base[guide.FirstForm[c]] > 0)) continue;
            var p = 0.0;
            for (var f = guide.FirstForm[c]; f < guide.FirstForm[c + 1]; f++) p += total[f];
            keys[i] = -p;
            ranked[i++] = guide.Guide.Candidates[c];
        }

        Order(keys, ranked, static c => c.Id);
        for (i = 0; i < count; i++) keys[i] = -keys[i];
        var odds = OddsInTwenty.Share(keys);
        var result = new RankedCandidate[count];
        for (i = 0; i < count; i++) result[i] = new RankedCandidate(ranked[i].Id, ranked[i].Name, ranked[i].Kind, keys[i], odds[i]);
        return result;
    }

    private static RankedForm[] Forms(Belief belief)
    {
        var guide = belief.Guide;
        var count = 0;
        for (var f = 0; f < guide.Forms.Length; f++)
        {
            if (belief.Base[f] > 0) count++;
        }

        var keys = new double[count];
        var forms = new CompiledForm[count];
        var i = 0;
        for (var f = 0; f < guide.Forms.Length; f++)
        {
            if (!(belief.Base[f] > 0)) continue;
            keys[i] = -belief.Total[f];
            forms[i++] = guide.Forms[f];
        }

        Order(keys, forms, static f => f.Key);
        var result = new RankedForm[count];
        for (i = 0; i < count; i++)
        {
            result[i] = new RankedForm(guide.Guide.Candidates[forms[i].Candidate].Id, forms[i].Form?.Id, forms[i].Name, -keys[i]);
        }

        return result;
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
    private static void Order<T>(double[] keys, T[] items, Func<T, string> id)
    {
        Array.Sort(keys, items);
        for (var start = 0; start < keys.Length;)
        {
            var end = start + 1;
            while (end < keys.Length && keys[end] == keys[start]) end++;
            if (end - start > 1) Array.Sort(items, start, end - start, Comparer<T>.Create((a, b) => string.CompareOrdinal(id(a), id(b))));
            start = end;
        }
    }
}
