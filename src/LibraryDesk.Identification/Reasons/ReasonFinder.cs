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
    /// <summary>Reasons between two candidates. The prior only sets which candidates make a missing cell neutral; odds before looking are no reason.</summary>
    /// <returns>Null when one of the ids is not a candidate of the guide, or both are the same.</returns>
    public static ReasonTable? Between(CompiledGuide guide, Evidence evidence, Prior prior, string candidateA, string candidateB)
    {
        var a = guide.CandidateIndex(candidateA);
        var b = guide.CandidateIndex(candidateB);
        if (a < 0 || b < 0 || a == b) return null;
        var rows = LikelihoodRows(guide, evidence, prior);
        var total = Decibans(guide, rows, a, b, without: -1);
        var reasons = new List<Reason>(rows.Length);
        for (var t = 0; t < rows.Length; t++)
        {
            var trait = evidence.Traits[t].Trait.Trait;
            reasons.Add(new Reason(trait.Id, trait.Name, Said(evidence, trait), total - Decibans(guide, rows, a, b, without: t), Sources(guide, a, trait.Id), Sources(guide, b, trait.Id)));
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

    private static double Decibans(CompiledGuide guide, double[][] rows, int a, int b, int without) =>
        10 / Math.Log(10) * (LogLikelihood(guide, rows, a, without) - LogLikelihood(guide, rows, b, without));

    /// <summary>log P(answers | candidate): the mixture over its forms.</summary>
    internal static double LogLikelihood(CompiledGuide guide, double[][] rows, int candidate, int without)
    {
        var (first, end) = (guide.FirstForm[candidate], guide.FirstForm[candidate + 1]);
        double sum = 0, scale = double.NegativeInfinity;
        for (var f = first; f < end; f++)
        {
            var log = Math.Log(guide.Forms[f].Weight);
            for (var t = 0; t < rows.Length; t++)
            {
                if (t != without) log += Math.Log(rows[t][f]);
            }

            if (log > scale)
            {
                sum = (sum * Math.Exp(scale - log)) + 1;
                scale = log;
            }
            else
            {
                sum += Math.Exp(log - scale);
            }
        }

        return scale + Math.Log(sum);
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

    private static List<string> Sources(CompiledGuide guide, int candidate, string trait)
    {
        var id = guide.Guide.Candidates[candidate].Id;
        return [.. guide.Guide.Cells
            .Where(c => c.Trait == trait && (c.Of == id || (c.Of.StartsWith(id, StringComparison.Ordinal) && c.Of.Length > id.Length && c.Of[id.Length] == '/')))
            .Select(c => c.Source).Distinct()];
    }
}
