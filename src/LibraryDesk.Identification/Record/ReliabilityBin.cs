namespace LibraryDesk.Identification.Record;

/// <summary>A probability said of an event, and whether it happened.</summary>
public readonly record struct BinaryForecast(double Probability, bool Happened);

/// <summary>One point of a reliability diagram.</summary>
/// <param name="Low">Lower end of the bin.</param>
/// <param name="High">Upper end of the bin.</param>
/// <param name="Cases">Forecasts in the bin.</param>
/// <param name="Said">Their mean probability.</param>
/// <param name="Was">Share of them that happened.</param>
/// <param name="WasLow">Lower end of the exact 95 % interval of that share.</param>
/// <param name="WasHigh">Upper end of it.</param>
public sealed record ReliabilityBin(double Low, double High, int Cases, double Said, double Was, double WasLow, double WasHigh)
{
    /// <summary>Bins of equal width; empty ones are left out.</summary>
    public static IReadOnlyList<ReliabilityBin> Of(IReadOnlyList<BinaryForecast> forecasts, int count = 10)
    {
        var bins = new List<ReliabilityBin>();
        foreach (var group in forecasts.GroupBy(f => IndexOf(f.Probability, count)).OrderBy(g => g.Key))
        {
            var n = group.Count();
            var happened = group.Count(f => f.Happened);
            var (low, high) = BinomialInterval.Exact(happened, n);
            bins.Add(new ReliabilityBin((double)group.Key / count, (group.Key + 1.0) / count, n, group.Average(f => f.Probability), (double)happened / n, low, high));
        }

        return bins;
    }

    internal static int IndexOf(double probability, int count) => Math.Clamp((int)(probability * count), 0, count - 1);
}
