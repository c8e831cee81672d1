namespace LibraryDesk.Identification.Consensus;

/// <summary>One person's vote on one item.</summary>
/// <param name="Item">Item, 0-based: a closed case.</param>
/// <param name="Rater">Person, 0-based.</param>
/// <param name="Class">What they said, 0-based.</param>
public readonly record struct Vote(int Item, int Rater, int Class);

/// <summary>What the votes say of items and people.</summary>
/// <param name="ClassShares">Share of each class among the items; they sum to 1.</param>
/// <param name="ErrorRates">Per rater, true class and class said: how often; rows sum to 1.</param>
/// <param name="ItemPosteriors">Per item, the probability of each class; they sum to 1.</param>
/// <param name="LogLikelihood">Natural logarithm of the likelihood, multinomial constants and priors left out.</param>
/// <param name="Rounds">Rounds of EM until nothing moved.</param>
public sealed record ConsensusFit(
    IReadOnlyList<double> ClassShares,
    IReadOnlyList<double[][]> ErrorRates,
    IReadOnlyList<double[]> ItemPosteriors,
    double LogLikelihood,
    int Rounds);

/// <summary>
/// Reliability of people who judged the same items, without knowing the truth: EM of A. P. Dawid and A. M. Skene 1979, Maximum likelihood estimation of
/// observer error-rates using the EM algorithm, Applied Statistics 28(1): 20-28. The likelihood has several maxima; the start is the shares of the votes.
/// </summary>
public static class DawidSkene
{
    private const int MostRounds = 5000;

    /// <summary>Fits shares and error rates.</summary>
    /// <param name="rightPrior">Votes each person is taken to have given rightly in each class before any count; 0 is plain maximum likelihood. With few
    /// closed cases a person should not be called perfect, or hopeless, for two votes.</param>
    /// <param name="wrongPrior">The same, spread over each wrong class.</param>
    /// <param name="tolerance">Stop when no item's posterior moves by more.</param>
    /// <returns>Null when there are no votes, or a vote lies outside the given numbers.</returns>
    public static ConsensusFit? Fit(IReadOnlyList<Vote> votes, int items, int raters, int classes, double rightPrior = 0, double wrongPrior = 0, double tolerance = 1e-10)
    {
        if (votes.Count == 0 || votes.Any(v => v.Item < 0 || v.Item >= items || v.Rater < 0 || v.Rater >= raters || v.Class < 0 || v.Class >= classes)) return null;
        var posteriors = VoteShares(votes, items, classes);
        var shares = new double[classes];
        var rates = NewRates(raters, classes);
        for (var round = 1; ; round++)
        {
            Maximise(votes, posteriors, shares, rates, rightPrior, wrongPrior);
            var (moved, logLikelihood) = Expect(votes, posteriors, shares, rates);
            if (moved < tolerance || round == MostRounds) return new ConsensusFit(shares, rates, posteriors, logLikelihood, round);
        }
    }

    private static double[][] VoteShares(IReadOnlyList<Vote> votes, int items, int classes)
    {
        var shares = new double[items][];
        for (var i = 0; i < items; i++) shares[i] = new double[classes];
        foreach (var vote in votes) shares[vote.Item][vote.Class]++;
        foreach (var row in shares) Normalise(row);
        return shares;
    }

    private static double[][][] NewRates(int raters, int classes)
    {
        var rates = new double[raters][][];
        for (var r = 0; r < raters; r++)
        {
            rates[r] = new double[classes][];
            for (var c = 0; c < classes; c++) rates[r][c] = new double[classes];
        }

        return rates;
    }

    private static void Maximise(IReadOnlyList<Vote> votes, double[][] posteriors, double[] shares, double[][][] rates, double rightPrior, double wrongPrior)
    {
        Array.Clear(shares);
        foreach (var item in posteriors)
        {
            for (var c = 0; c < shares.Length; c++) shares[c] += item[c];
        }

        Normalise(shares);
        foreach (var rater in rates)
        {
            for (var c = 0; c < rater.Length; c++)
            {
                Array.Fill(rater[c], wrongPrior);
                rater[c][c] = rightPrior;
            }
        }

        foreach (var vote in votes)
        {
            for (var c = 0; c < shares.Length; c++) rates[vote.Rater][c][vote.Class] += posteriors[vote.Item][c];
        }

        foreach (var rater in rates)
        {
            foreach (var row in rater) Normalise(row);
        }
    }

    private static (double Moved, double LogLikelihood) Expect(IReadOnlyList<Vote> votes, double[][] posteriors, double[] shares, double[][][] rates)
    {
        var logs = new double[posteriors.Length][];
        for (var i = 0; i < logs.Length; i++) logs[i] = [.. shares.Select(s => Math.Log(s))];
        foreach (var vote in votes)
        {
            for (var c = 0; c < shares.Length; c++) logs[vote.Item][c] += Math.Log(rates[vote.Rater][c][vote.Class]);
        }

        double moved = 0, total = 0;
        for (var i = 0; i < logs.Length; i++)
        {
            var most = logs[i].Max();
            var sum = logs[i].Sum(l => Math.Exp(l - most));
            total += most + Math.Log(sum);
            for (var c = 0; c < shares.Length; c++)
            {
                var p = Math.Exp(logs[i][c] - most) / sum;
                moved = Math.Max(moved, Math.Abs(p - posteriors[i][c]));
                posteriors[i][c] = p;
            }
        }

        return (moved, total);
    }

    private static void Normalise(double[] row)
    {
        var sum = row.Sum();
        for (var i = 0; i < row.Length; i++) row[i] = sum > 0 ? row[i] / sum : 1.0 / row.Length;
    }
}
