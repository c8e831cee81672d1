namespace LibraryDesk.Identification.Guides;

/// <summary>The standard normal distribution.</summary>
internal static class Normal
{
    /// <summary>P(low &lt; Z &lt; high), computed on the side where little is lost to rounding.</summary>
    public static double Between(double low, double high)
    {
        if (!(high > low)) return 0;
        return low > 0 ? Upper(low) - Upper(high) : Lower(high) - Lower(low);
    }

    /// <summary>P(Z &lt; z).</summary>
    public static double Lower(double z) => z > 0 ? 1 - Tail(z) : Tail(-z);

    private static double Upper(double z) => z > 0 ? Tail(z) : 1 - Tail(-z);

    // Upper tail for z >= 0: erfc by the Chebyshev-fitted form of W. J. Cody's problem as given in Press et al.,
    // Numerical Recipes, section 6.2 (relative error below 1.2e-7 everywhere); enough for bins of a trait.
    private static double Tail(double z)
    {
        if (double.IsPositiveInfinity(z)) return 0;
        var x = z / Math.Sqrt(2);
        var t = 1 / (1 + (0.5 * x));
        var poly = -1.26551223 + (t * (1.00002368 + (t * (0.37409196 + (t * (0.09678418 + (t * (-0.18628806
            + (t * (0.27886807 + (t * (-1.13520398 + (t * (1.48851587 + (t * (-0.82215223 + (t * 0.17087277)))))))))))))))));
        return 0.5 * t * Math.Exp((-x * x) + poly);
    }
}
