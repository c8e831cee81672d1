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
        var forms = FormProbabilities(belief, prior);
        var candidates = new CandidateRanking(guide, forms);
        return new Ranking(
            guide.Guide.Id,
            guide.Guide.Version,
            candidates,
            new FormRanking(guide, forms),
            belief.RowCount > 1 ? Packets(belief, prior.Origin!) : [],
            belief.RowMass(0),
            candidates.EntropyBits());
    }

    /// <summary>Posterior of every form, -1 where its candidate is out of play.</summary>
    private static double[] FormProbabilities(Belief belief, Prior prior)
    {
        var probabilities = belief.Total.ToArray();
        if (prior.Among is null) return probabilities;
        var baseRow = belief.Base;
        for (var f = 0; f < probabilities.Length; f++)
        {
            if (!(baseRow[f] > 0)) probabilities[f] = -1;
        }

        return probabilities;
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
