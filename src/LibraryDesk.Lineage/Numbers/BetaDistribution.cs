namespace LibraryDesk.Lineage.Numbers;

/// <summary>
/// The beta distribution. The regularised incomplete beta function is worked out by its continued fraction (NIST Handbook of
/// Mathematical Functions 8.17.22, evaluated by Lentz's method), the quantile by halving: slow but sure.
/// </summary>
public static class BetaDistribution
{
    private const double Tiny = 1e-300;

    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    /// <param name="x">0 to 1; beyond, the answer is 0 or 1.</param>
    /// <param name="alpha">Above 0.</param>
    /// <param name="beta">Above 0.</param>
    public static double Below(double x, double alpha, double beta)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(alpha);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(beta);
        if (x <= 0) return 0;
        if (x >= 1) return 1;
        var front = Math.Exp((alpha * Math.Log(x)) + (beta * Math.Log(1 - x)) - LogBeta(alpha, beta));

        // The fraction converges fast on one side of the mean; the other side is its mirror.
        return x < (alpha + 1) / (alpha + beta + 2)
            ? front * Fraction(x, alpha, beta) / alpha
            : 1 - (front * Fraction(1 - x, beta, alpha) / beta);
    }

    /// <summary>The value that a share <paramref name="probability"/> of the distribution lies at or below.</summary>
    public static double Quantile(double probability, double alpha, double beta)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        var (low, high) = (0.0, 1.0);
        for (var step = 0; step < 200 && high - low > 1e-15; step++)
        {
            var middle = (low + high) / 2;
            if (Below(middle, alpha, beta) < probability) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    /// <summary>The logarithm of the beta function.</summary>
    public static double LogBeta(double alpha, double beta) => LogGamma(alpha) + LogGamma(beta) - LogGamma(alpha + beta);

    /// <summary>The logarithm of the gamma function for arguments above 0: Stirling's series (NIST Handbook 5.11.1) after stepping up to 15.</summary>
    public static double LogGamma(double value)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(value);
        var shift = 0.0;
        while (value < 15)
        {
            shift -= Math.Log(value);
            value++;
        }

        var inverse = 1 / value;
        var square = inverse * inverse;
        var series = inverse * ((1.0 / 12) - (square * ((1.0 / 360) - (square * ((1.0 / 1260) - (square * ((1.0 / 1680) - (square / 1188))))))));
        return shift + ((value - 0.5) * Math.Log(value)) - value + (0.5 * Math.Log(2 * Math.PI)) + series;
    }

    private static double Fraction(double x, double alpha, double beta)
    {
        var c = 1.0;
        var d = Inverse(1 - ((alpha + beta) * x / (alpha + 1)));
        var fraction = d;
        for (var m = 1; m < 10_000; m++)
        {
            var even = m * (beta - m) * x / ((alpha + (2 * m) - 1) * (alpha + (2 * m)));
            d = Inverse(1 + (even * d));
            c = NotZero(1 + (even / c));
            fraction *= d * c;
            var odd = -(alpha + m) * (alpha + beta + m) * x / ((alpha + (2 * m)) * (alpha + (2 * m) + 1));
            d = Inverse(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            var change = d * c;
            fraction *= change;
            if (Math.Abs(change - 1) < 1e-16) break;
        }

        return fraction;
    }

    private static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;

    private static double Inverse(double value) => 1 / NotZero(value);
}
