namespace LibraryDesk.Identification.Consensus;

/// <summary>How far people agree beyond chance.</summary>
/// <param name="Observed">Share of pairs of votes on one item that agree.</param>
/// <param name="ByChance">Share expected if everybody drew from the overall shares.</param>
/// <param name="Kappa">(Observed - ByChance) / (1 - ByChance); NaN when only one class was ever named.</param>
/// <param name="ByClass">Kappa of each class alone; NaN for a class never or always named.</param>
public sealed record KappaResult(double Observed, double ByChance, double Kappa, IReadOnlyList<double> ByClass);

/// <summary>Chance-corrected agreement.</summary>
public static class Agreement
{
    /// <summary>
    /// Kappa for many raters: J. L. Fleiss 1971, Measuring nominal scale agreement among many raters, Psychological Bulletin 76(5): 378-382.
    /// </summary>
    /// <param name="counts">Per item, how many people named each class; every item has the same number of votes, 2 or more.</param>
    /// <returns>Null when there are no items, or votes differ in number or are fewer than 2.</returns>
    public static KappaResult? Fleiss(IReadOnlyList<IReadOnlyList<int>> counts)
    {
        if (counts.Count == 0) return null;
        var votes = counts[0].Sum();
        var classes = counts[0].Count;
        if (votes < 2 || counts.Any(c => c.Count != classes || c.Sum() != votes)) return null;
        var shares = new double[classes];
        var observed = 0.0;
        foreach (var item in counts)
        {
            for (var c = 0; c < classes; c++)
            {
                shares[c] += (double)item[c] / (votes * counts.Count);
                observed += (double)item[c] * (item[c] - 1) / ((double)votes * (votes - 1) * counts.Count);
            }
        }

        var chance = shares.Sum(p => p * p);
        return new KappaResult(observed, chance, (observed - chance) / (1 - chance), [.. Enumerable.Range(0, classes).Select(c => OfClass(counts, c, votes, shares[c]))]);
    }

    /// <summary>Kappa of two raters on the same items: J. Cohen 1960, Educational and Psychological Measurement 20: 37-46.</summary>
    /// <returns>Null when the lists differ in length or are empty.</returns>
    public static KappaResult? Cohen(IReadOnlyList<int> first, IReadOnlyList<int> second, int classes)
    {
        if (first.Count == 0 || first.Count != second.Count) return null;
        double n = first.Count;
        var observed = first.Zip(second).Count(p => p.First == p.Second) / n;
        var chance = Enumerable.Range(0, classes).Sum(c => first.Count(x => x == c) / n * (second.Count(x => x == c) / n));
        return new KappaResult(observed, chance, (observed - chance) / (1 - chance), []);
    }

    private static double OfClass(IReadOnlyList<IReadOnlyList<int>> counts, int c, int votes, double share)
    {
        var disagreement = counts.Sum(item => (double)item[c] * (votes - item[c]));
        return 1 - (disagreement / (counts.Count * (double)votes * (votes - 1) * share * (1 - share)));
    }
}
