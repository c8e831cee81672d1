using LibraryDesk.Lineage.Numbers;

namespace LibraryDesk.Lineage.Names;

/// <summary>What is believed of the share of seeds true to name, as a beta distribution.</summary>
/// <param name="Mean">0 to 1.</param>
/// <param name="Weight">How many plants it is worth: the sum of the beta distribution's two parameters, above 0.</param>
public readonly record struct PurityBelief(double Mean, double Weight)
{
    /// <summary>The belief after a check: of some plants, so many were off-types (beta-binomial: the parameters grow by what was seen).</summary>
    public PurityBelief After(int plants, int off)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(off);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(off, plants);
        return new(((Mean * Weight) + plants - off) / (Weight + plants), Weight + plants);
    }

    /// <summary>The bounds that hold a share of the belief, equal tails outside.</summary>
    public (double Low, double High) Interval(double share = 0.95)
    {
        var alpha = Math.Max(1e-6, Mean * Weight);
        var beta = Math.Max(1e-6, (1 - Mean) * Weight);
        return (BetaDistribution.Quantile((1 - share) / 2, alpha, beta), BetaDistribution.Quantile((1 + share) / 2, alpha, beta));
    }
}
