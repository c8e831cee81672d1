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

    [ThreadStatic]
    private static double[]? _rows;

    [ThreadStatic]
    private static double[]? _scratch;

    /// <summary>Reasons between two candidates. The prior only sets which candidates make a missing cell neutral; odds before looking are no reason.</summary>
    /// <returns>Null when one of the ids is not a candidate of the guide, or both are the same.</returns>
    public static ReasonTable? Between(CompiledGuide guide, Evidence evidence, Prior prior, string candidateA, string candidateB)
    {
        var a = guide.CandidateIndex(candidateA);
        var b = guide.CandidateIndex(candidateB);
        if (a < 0 || b < 0 || a == b) return null;
        var traits = evidence.Traits.Length;
        var rows = FillRows(guide, evidence, Belief.Of(guide, evidence, prior).Base);
        Span<double> ofA = stackalloc double[traits + 1];
        Span<double> ofB = stackalloc double[traits + 1];
        FillWithout(guide, rows, a, ofA);
        FillWithout(guide, rows, b, ofB);
        var total = Decibans * (ofA[^1] - ofB[^1]);
        Reason[] reasons = traits == 0 ? [] : new Reason[traits];
        var together = total;
        for (var t = 0; t < traits; t++)
        {
            var trait = evidence.Traits[t].Trait;
            var decibans = total - (Decibans * (ofA[t] - ofB[t]));
            together -= decibans;
            reasons[t] = new Reason(trait.Trait.Id, trait.Trait.Name, Said(evidence, trait.Trait), decibans, guide.SourcesOf(a, trait.Index), guide.SourcesOf(b, trait.Index));
        }

        reasons.AsSpan().Sort((x, y) => Math.Abs(y.Decibans).CompareTo(Math.Abs(x.Decibans)));
        return new ReasonTable(candidateA, candidateB, total, reasons, together);
    }

    /// <summary>One row of likelihoods for each trait, in a buffer kept per thread.</summary>
    private static ReadOnlySpan<double> FillRows(CompiledGuide guide, Evidence evidence, ReadOnlySpan<double> weights)
    {
        var stride = guide.Stride;
        var looks = 1;
        foreach (var t in evidence.Traits) looks = Math.Max(looks, t.Looks.Length);
        if (_rows is null || _rows.Length < stride * evidence.Traits.Length) _rows = new double[stride * evidence.Traits.Length];
        if (_scratch is null || _scratch.Length < stride * looks) _scratch = new double[stride * looks];
        for (var t = 0; t < evidence.Traits.Length; t++) Likelihood.Fill(guide, evidence.Traits[t], weights, _rows.AsSpan(t * stride, stride), _scratch);
        return _rows;
    }

    /// <summary>log P(answers | candidate), the mixture over its forms: without each trait in turn, and at the end with all.</summary>
    private static void FillWithout(CompiledGuide guide, ReadOnlySpan<double> rows, int candidate, Span<double> all)
    {
        Span<double> logs = stackalloc double[all.Length - 1];
        Span<double> most = stackalloc double[all.Length];
        all.Clear();
        most.Fill(double.NegativeInfinity);
        for (var f = guide.FirstForm[candidate]; f < guide.FirstForm[candidate + 1]; f++)
        {
            var sum = Math.Log(guide.Forms[f].Weight);
            for (var t = 0; t < logs.Length; t++) sum += logs[t] = Math.Log(rows[(t * guide.Stride) + f]);
            for (var t = 0; t < all.Length; t++) AddLog(ref all[t], ref most[t], t < logs.Length ? sum - logs[t] : sum);
        }

        for (var t = 0; t < all.Length; t++) all[t] = most[t] + Math.Log(all[t]);
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
        string? first = null;
        SortedSet<string>? several = null;
        for (var i = 0; i < evidence.Answers.Count; i++)
        {
            var answer = evidence.Answers[i];
            if (answer.Trait != trait.Id) continue;
            var said = Said(trait, answer);
            if (first is null) first = said;
            else (several ??= new SortedSet<string>(StringComparer.Ordinal) { first }).Add(said);
        }

        return several is null ? first ?? "" : string.Join("; ", several);
    }

    private static string Said(Trait trait, Band band)
    {
        var invariant = CultureInfo.InvariantCulture;
        if (band.Low == band.High) return string.Create(invariant, $"{SignificantFigures.Round(band.Low, 4):0.#########} {trait.Unit}");
        if (double.IsInfinity(band.High)) return string.Create(invariant, $"{SignificantFigures.Round(band.Low, 4):0.#########} {trait.Unit} or more");
        return band.Low == 0 ? string.Create(invariant, $"{SignificantFigures.Round(band.High, 4):0.#########} {trait.Unit} or less") : string.Create(invariant, $"{SignificantFigures.Round(band.Low, 4):0.#########} to {SignificantFigures.Round(band.High, 4):0.#########} {trait.Unit}");
    }

    private static string Said(Trait trait, Answer answer)
    {
        if (answer.States.Count == 1) return NameOf(trait, answer.States[0]);
        return answer.Bands.Count == 1 ? Said(trait, answer.Bands[0]) : SaidOfMany(trait, answer);
    }

    private static string SaidOfMany(Trait trait, Answer answer) =>
        string.Join(" or ", answer.Bands.Count > 0 ? answer.Bands.Select(b => Said(trait, b)) : answer.States.Select(s => NameOf(trait, s)));

    private static string NameOf(Trait trait, string state) => trait.FindState(state)?.Name ?? state;
}
