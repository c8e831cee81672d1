namespace LibraryDesk.Identification.Record;

/// <summary>How true the odds were over determined cases.</summary>
/// <param name="Cases">Number of cases; with few of them every figure is rough.</param>
/// <param name="Accuracy">Share of cases whose likeliest candidate it was.</param>
/// <param name="Brier">Mean over cases of the sum over candidates of (probability - outcome) squared, 0 to 2 (G. W. Brier 1950, Monthly Weather Review 78: 1-3).</param>
/// <param name="LogLoss">Mean of -ln of the probability given to the truth, in nats.</param>
/// <param name="CalibrationError">Mean gap between the odds of the likeliest candidate and how often it was right, over ten equal bins.</param>
/// <param name="CalibrationErrorLimit">95th percentile of that gap if the odds were true: a perfect forecaster also scatters.</param>
/// <param name="Bins">The reliability diagram of the likeliest candidate's odds; empty bins are left out.</param>
public sealed record DeskRecord(
    int Cases,
    double Accuracy,
    double Brier,
    double LogLoss,
    double CalibrationError,
    double CalibrationErrorLimit,
    IReadOnlyList<ReliabilityBin> Bins)
{
    private const int BinCount = 10;
    private const int Simulations = 2000;

    /// <summary>True where the odds are further from the truth than chance explains.</summary>
    public bool IsMiscalibrated => CalibrationError > CalibrationErrorLimit;

    /// <summary>The record of judged cases. Null when there are none. The same cases give the same record.</summary>
    public static DeskRecord? Of(IReadOnlyList<JudgedForecast> forecasts)
    {
        if (forecasts.Count == 0) return null;
        double n = forecasts.Count;
        var top = forecasts.Select(f => new BinaryForecast(f.Probabilities[f.First], f.First == f.Truth)).ToList();
        return new DeskRecord(
            forecasts.Count,
            top.Count(t => t.Happened) / n,
            forecasts.Sum(BrierOf) / n,
            forecasts.Sum(f => -Math.Log(Math.Max(f.Probabilities[f.Truth], 1e-15))) / n,
            ErrorOf(top),
            LimitOf(top),
            ReliabilityBin.Of(top, BinCount));
    }

    private static double BrierOf(JudgedForecast forecast)
    {
        var sum = 0.0;
        for (var c = 0; c < forecast.Probabilities.Count; c++)
        {
            var miss = forecast.Probabilities[c] - (c == forecast.Truth ? 1 : 0);
            sum += miss * miss;
        }

        return sum;
    }

    /// <summary>Expected calibration error: the gap of each bin, weighed by its cases.</summary>
    internal static double ErrorOf(IReadOnlyList<BinaryForecast> forecasts)
    {
        Span<double> said = stackalloc double[BinCount];
        Span<double> was = stackalloc double[BinCount];
        foreach (var f in forecasts)
        {
            var bin = ReliabilityBin.IndexOf(f.Probability, BinCount);
            said[bin] += f.Probability;
            if (f.Happened) was[bin]++;
        }

        var error = 0.0;
        for (var b = 0; b < BinCount; b++) error += Math.Abs(said[b] - was[b]);
        return error / forecasts.Count;
    }

    private static double LimitOf(List<BinaryForecast> forecasts)
    {
        var random = new SeededDraws(0xCA11_B8A7UL);
        var errors = new double[Simulations];
        var drawn = new BinaryForecast[forecasts.Count];
        for (var s = 0; s < Simulations; s++)
        {
            for (var i = 0; i < drawn.Length; i++) drawn[i] = new BinaryForecast(forecasts[i].Probability, random.Next() < forecasts[i].Probability);
            errors[s] = ErrorOf(drawn);
        }

        Array.Sort(errors);
        return errors[(int)Math.Ceiling(0.95 * Simulations) - 1];
    }
}
