namespace LibraryDesk.Lineage.Numbers;

/// <summary>The standard normal distribution, from its series near the middle and its continued fraction in the tails (NIST Handbook 7.6.2 and 7.9.1).</summary>
public static class NormalDistribution
{
    /// <summary>The probability of a value at or below <paramref name="z"/>.</summary>
    public static double Below(double z) => z < 0 ? Tail(-z) : 1 - Tail(z);

    /// <summary>The normal deviate that a share <paramref name="probability"/> lies at or below (a probit less 5); infinite at 0 and 1.</summary>
    public static double Deviate(double probability)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        if (probability == 0) return double.NegativeInfinity;
        if (probability == 1) return double.PositiveInfinity;
        if (probability > 0.5) return -Deviate(1 - probability);
        var (low, high) = (-40.0, 0.0);
        for (var step = 0; step < 200 && high - low > 1e-14; step++)
        {
            var middle = (low + high) / 2;
            if (Below(middle) < probability) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    // The probability above z, for z of 0 or more.
    private static double Tail(double z)
    {
        var density = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
        if (z > 3.5)
        {
            var fraction = z;
            for (var k = 60; k >= 1; k--) fraction = z + (k / fraction);
            return density / fraction;
        }

        var (term, sum) = (z, z);
        for (var k = 1; k < 200 && term > 1e-18 * sum; k++)
        {
            term *= z * z / ((2 * k) + 1);
            sum += term;
        }

        return 0.5 - (density * sum);
    }
}
