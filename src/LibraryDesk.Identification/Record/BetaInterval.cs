namespace LibraryDesk.Identification.Record;

/// <summary>
/// The interval of a share that is known by weights, not by whole counts: quantiles of a beta law. The integral is summed by its continued fraction
/// (M. Abramowitz and I. A. Stegun 1964, Handbook of Mathematical Functions, 26.5.8).
/// </summary>
public static class BetaInterval
{
    private const int MostTerms = 500;

    /// <summary>The middle 95 % of a beta law.</summary>
    /// <param name="a">Weight for, above 0.</param>
    /// <param name="b">Weight against, above 0.</param>
    public static (double Low, double High) Of(double a, double b) => (Quantile(a, b, 0.025), Quantile(a, b, 0.975));

    /// <summary>The value that a share of <paramref name="p"/> of the law lies below.</summary>
    public static double Quantile(double a, double b, double p)
    {
        double low = 0, high = 1;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (Below(a, b, middle) < p) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    /// <summary>The share of the law below <paramref name="x"/>: the regularised incomplete beta function.</summary>
    public static double Below(double a, double b, double x)
    {
        if (x <= 0) return 0;
        if (x >= 1) return 1;
        // The fraction converges quickly on this side of the mean only.
        if (x > (a + 1) / (a + b + 2)) return 1 - Below(b, a, 1 - x);
        var front = Math.Exp((a * Math.Log(x)) + (b * Math.Log(1 - x)) - LogBeta(a, b)) / a;
        return front * Fraction(a, b, x);
    }

    // Evaluated from the front by Lentz's method.
    private static double Fraction(double a, double b, double x)
    {
        double c = 1, d = 1 / Away(1 - ((a + b) * x / (a + 1)));
        var sum = d;
        for (var m = 1; m <= MostTerms; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            (c, d) = (Away(1 + (even / c)), 1 / Away(1 + (even * d)));
            sum *= c * d;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            (c, d) = (Away(1 + (odd / c)), 1 / Away(1 + (odd * d)));
            var step = c * d;
            sum *= step;
            if (Math.Abs(step - 1) < 1e-14) break;
        }

        return sum;
    }

    private static double Away(double value) => Math.Abs(value) < 1e-300 ? 1e-300 : value;

    private static double LogBeta(double a, double b) => LogGamma(a) + LogGamma(b) - LogGamma(a + b);

    /// <summary>Stirling's series (Abramowitz and Stegun 6.1.41) once the argument is large enough for it, reached by the recurrence 6.1.15.</summary>
    private static double LogGamma(double x)
    {
        var shift = 0.0;
        for (; x < 12; x++) shift -= Math.Log(x);
        var r = 1 / (x * x);
        var series = ((((((-r / 1680) + (1.0 / 1260)) * r) - (1.0 / 360)) * r) + (1.0 / 12)) / x;
        return shift + ((x - 0.5) * Math.Log(x)) - x + (0.5 * Math.Log(2 * Math.PI)) + series;
    }
}
