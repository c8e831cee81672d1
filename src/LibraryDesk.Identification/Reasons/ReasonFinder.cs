using System.Globalization;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Reasons;

/// <summary>
/// Says which traits speak for one candidate against another. A trait's weight is 10 log10 BF(all) - 10 log10 BF(all without it), in decibans
/// (I. J. Good 1950, Probability and the Weighing of Evidence): what taking the answer back would change.
/// </summary>
public static class ReasonFinder
{
    /// <summary>Decibans in a natural unit of weight.</summary>
    private static readonly double Decibans = 10 / Math.Log(10);

    /// <summary>Reasons between two candidates. The prior only sets which candidates make a missing cell neutral; odds before looking are no reason.</summary>
    /// <returns>Null when one of the ids is not a candidate of the guide, or both are the same.</returns>
    public static ReasonTable? Between(CompiledGuide guide, Evidence evidence, Prior prior, string candidateA, string candidateB)
    {
        var a = guide.CandidateIndex(candidateA);
        var b = guide.CandidateIndex(candidateB);
        if (a < 0 || b < 0 || a == b) return null;
        var rows = LikelihoodRows(guide, evidence, prior);
        var ofA = Without(guide, rows, a);
        var ofB = Without(guide, rows, b);
        var total = Decibans * (ofA[^1] - ofB[^1]);
        var reasons = new List<Reason>(rows.Length);
        for (var t = 0; t < rows.Length; t++)
        {
            var trait = evidence.Traits[t].Trait;
            reasons.Add(new Reason(trait.Trait.Id, trait.Trait.Name, Said(evidence, trait.Trait), total - (Decibans * (ofA[t] - ofB[t])), guide.SourcesOf(a, trait.Index), guide.SourcesOf(b, trait.Index)));
        }

        reasons.Sort((x, y) => Math.Abs(y.Decibans).CompareTo(Math.Abs(x.Decibans)));
        return new ReasonTable(candidateA, candidateB, total, reasons, total - reasons.Sum(r => r.Decibans));
    }

    internal static double[][] LikelihoodRows(CompiledGuide guide, Evidence evidence, Prior prior)
    {
        var weights = new double[guide.Stride];
        PriorMass.FillBase(guide, prior, weights);
        var looks = 1;
        foreach (var t in evidence.Traits) looks = Math.Max(looks, t.Looks.Length);
        var scratch = new double[guide.Stride * looks];
        var rows = new double[evidence.Traits.Length][];
        for (var t = 0; t < rows.Length; t++)
        {
            rows[t] = new double[guide.Stride];
            Likelihood.Fill(guide, evidence.Traits[t], weights, rows[t], scratch);
        }

        return rows;
    }

    /// <summary>log P(answers | candidate), the mixture over its forms: without each trait in turn, and at the end with all.</summary>
    private static double[] Without(CompiledGuide guide, double[][] rows, int candidate)
    {
        var (first, end) = (guide.FirstForm[candidate], guide.FirstForm[candidate + 1]);
        var logs = new double[rows.Length];
        var all = new double[rows.Length + 1];
        var most = new double[rows.Length + 1];
        Array.Fill(most, double.NegativeInfinity);
        for (var f = first; f < end; f++)
        {
            var sum = Math.Log(guide.Forms[f].Weight);
            for (var t = 0; t < logs.Length; t++) sum += logs[t] = Math.Log(rows[t][f]);
            for (var t = 0; t < all.Length; t++) AddLog(ref all[t], ref most[t], t < logs.Length ? sum - logs[t] : sum);
        }

        for (var t = 0; t < all.Length; t++) all[t] = most[t] + Math.Log(all[t]);
        return all;
    }

    /// <summary>Adds exp(log) to sum * exp(most), keeping the largest exponent outside.</summary>
    private static void AddLog(ref double sum, ref double most, double log)
    {
        if (log > most)
        {
            sum = (sum * Math.Exp(most - log)) + 1;
            most = log;
        }
        else
        {
            sum += Math.Exp(log - most);
        }
    }

    /// <summary>What was answered to a trait, in words.</summary>
    public static string Said(Evidence evidence, Trait trait)
    {
        var answers = evidence.Answers.Where(a => a.Trait == trait.Id).Select(a => Said(trait, a));
        return string.Join("; ", answers.Distinct().Order(StringComparer.Ordinal));
    }

    private static string Said(Trait trait, Answer answer)
    {
        static string Number(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
        var said = answer.Bands.Count > 0
            ? answer.Bands.Select(b => (b.Low == b.High ? Number(b.Low) : $"{Number(b.Low)} to {Number(b.High)}") + " " + trait.Unit)
            : answer.States.Select(s => trait.FindState(s)?.Name ?? s);
        return string.Join(" or ", said);
    }
}
