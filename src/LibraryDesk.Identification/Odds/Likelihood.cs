using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>How well each form predicts the answers to one trait.</summary>
internal static class Likelihood
{
    /// <summary>
    /// Chance that a second flower, fruit or leaf of one plant is a fresh draw from its form instead of the plant's own usual state.
    /// So one look has exactly the form's frequencies, and further looks at the same plant tell less than further plants would.
    /// </summary>
    private const double WithinPlant = 0.25;

    /// <summary>Fills one row of likelihoods, missing forms and "something else" included.</summary>
    /// <param name="weights">Prior of each form, without origin, for the mean that makes missing cells neutral.</param>
    /// <param name="scratch">As long as the row times the number of looks.</param>
    public static void Fill(CompiledGuide guide, TraitEvidence evidence, ReadOnlySpan<double> weights, Span<double> row, Span<double> scratch)
    {
        FillPlain(guide, evidence.Trait, evidence.Looks, weights, row, scratch);
        if (guide.Guide.Temper == 1) return;
        for (var f = 0; f < guide.Forms.Length; f++) row[f] = Math.Pow(row[f], guide.Guide.Temper);
    }

    /// <summary>The same without the guide's temper.</summary>
    public static void FillPlain(CompiledGuide guide, CompiledTrait trait, double[][] looks, ReadOnlySpan<double> weights, Span<double> row, Span<double> scratch)
    {
        if (looks.Length == 1) SumStates(trait, looks[0], row);
        else SumLooks(trait, looks, row, scratch);
        Neutral(guide, trait, weights, row, looks);
    }

    /// <summary>Likelihood of the answers under a distribution over states that belongs to no form.</summary>
    public static double Of(double[][] looks, ReadOnlySpan<double> shares)
    {
        if (looks.Length == 1) return Sum(looks[0], shares);
        var total = 0.0;
        for (var s = 0; s < shares.Length; s++)
        {
            var product = shares[s];
            foreach (var look in looks) product *= ((1 - WithinPlant) * look[s]) + (WithinPlant * Sum(look, shares));
            total += product;
        }

        return total;
    }

    private static double Sum(double[] look, ReadOnlySpan<double> shares)
    {
        var sum = 0.0;
        for (var s = 0; s < shares.Length; s++) sum += shares[s] * look[s];
        return sum;
    }

    private static void SumStates(CompiledTrait trait, double[] seen, Span<double> row) => Rows.SumScaled(row, trait.Theta, seen);

    private static void SumLooks(CompiledTrait trait, double[][] looks, Span<double> row, Span<double> scratch)
    {
        var stride = trait.Stride;
        row.Clear();
        for (var l = 0; l < looks.Length; l++)
        {
            var mean = scratch.Slice(l * stride, stride);
            SumStates(trait, looks[l], mean);
        }

        for (var s = 0; s < trait.States; s++)
        {
            var theta = trait.ThetaRow(s);
            for (var f = 0; f < stride; f++)
            {
                if (theta[f] == 0) continue;
                var product = theta[f];
                for (var l = 0; l < looks.Length; l++) product *= ((1 - WithinPlant) * looks[l][s]) + (WithinPlant * scratch[(l * stride) + f]);
                row[f] += product;
            }
        }
    }

    /// <summary>
    /// A form of a species without cells takes the prior-weighted mean of those that have one, so that the trait moves it neither up nor down
    /// against all the rest. "Something else" is half that mean, half every state alike.
    /// </summary>
    private static void Neutral(CompiledGuide guide, CompiledTrait trait, ReadOnlySpan<double> weights, Span<double> row, double[][] looks)
    {
        if (trait.Missing.Length == 0 && guide.SomethingElse < 0) return;
        var mass = Rows.Dot(weights, trait.Known);
        var pooled = mass > 0 ? Rows.Dot(weights, row) / mass : Of(looks, trait.ThetaPool);
        foreach (var f in trait.Missing) row[f] = pooled;
        if (guide.SomethingElse >= 0) row[guide.SomethingElse] = SomethingElse(pooled, Uniform(looks, trait.States));
    }

    internal static double SomethingElse(double pooled, double uniform) => (0.5 * pooled) + (0.5 * uniform);

    private static double Uniform(double[][] looks, int states)
    {
        Span<double> shares = stackalloc double[states];
        shares.Fill(1.0 / states);
        return Of(looks, shares);
    }
}
