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

    /// <summary>
    /// The middle 95 % of Fleiss' kappa over draws of the same number of items with replacement (B. Efron 1979, Bootstrap methods, Annals of Statistics 7: 1-26).
    /// The same items give the same interval.
    /// </summary>
    /// <returns>Null where <see cref="Fleiss"/> is, or where too few draws name more than one class.</returns>
    public static (double Low, double High)? FleissInterval(IReadOnlyList<IReadOnlyList<int>> counts, int draws = 1000)
    {
        if (Fleiss(counts) is null) return null;
        var random = new SeededDraws(0xF1E1_55UL);
        var kappas = new List<double>(draws);
        for (var d = 0; d < draws; d++)
        {
            IReadOnlyList<int>[] drawn = [.. Enumerable.Range(0, counts.Count).Select(_ => counts[(int)(random.Next() * counts.Count)])];
            if (Fleiss(drawn)!.Kappa is var kappa && double.IsFinite(kappa)) kappas.Add(kappa);
        }

        if (kappas.Count < draws / 2) return null;
        kappas.Sort();
        return (kappas[(int)(0.025 * kappas.Count)], kappas[(int)Math.Ceiling(0.975 * kappas.Count) - 1]);
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
