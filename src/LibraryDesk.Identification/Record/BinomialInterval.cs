namespace LibraryDesk.Identification.Record;

/// <summary>Exact interval of a share (C. J. Clopper and E. S. Pearson 1934, Biometrika 26: 404-413).</summary>
public static class BinomialInterval
{
    /// <summary>The interval that holds the true share in at least 95 of 100 such counts.</summary>
    /// <param name="happened">How often it happened, 0 to <paramref name="of"/>.</param>
    public static (double Low, double High) Exact(int happened, int of)
    {
        if (of <= 0 || happened < 0 || happened > of) return (0, 1);
        var low = happened == 0 ? 0 : Solve(p => AtLeast(happened, of, p), 0.025);
        var high = happened == of ? 1 : Solve(p => 1 - AtLeast(happened + 1, of, p), 0.025, falling: true);
        return (low, high);
    }

    private static double Solve(Func<double, double> tail, double level, bool falling = false)
    {
        double low = 0, high = 1;
        for (var i = 0; i < 80; i++)
        {
            var middle = (low + high) / 2;
            if (tail(middle) < level != falling) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    /// <summary>P(X >= k) of a binomial, summed in logarithms.</summary>
    private static double AtLeast(int k, int n, double p)
    {
        if (k <= 0) return 1;
        if (k > n || p <= 0) return 0;
        if (p >= 1) return 1;
        double logP = Math.Log(p), logQ = Math.Log(1 - p), logChoose = 0, sum = 0;
        for (var i = 0; i <= n; i++)
        {
            if (i > 0) logChoose += Math.Log(n - i + 1) - Math.Log(i);
            if (i >= k) sum += Math.Exp(logChoose + (i * logP) + ((n - i) * logQ));
        }

        return Math.Min(1, sum);
    }
}
