namespace LibraryDesk.Identification.Record;

/// <summary>
/// The Brier score of a yes-or-no event taken apart: score = reliability - resolution + uncertainty (A. H. Murphy 1973, A new vector partition of the
/// probability score, Journal of Applied Meteorology 12: 595-600).
/// </summary>
/// <param name="Reliability">Mean squared gap between what was said and what was; 0 is best.</param>
/// <param name="Resolution">How far the forecasts part cases that differ; the more the better.</param>
/// <param name="Uncertainty">What the event itself brings: share times one less share.</param>
/// <param name="Score">Mean of (probability - outcome) squared.</param>
public sealed record MurphyDecomposition(double Reliability, double Resolution, double Uncertainty, double Score)
{
    /// <summary>Takes the score apart over groups of equal forecasts, so that the three parts sum to it exactly. Null when there are no forecasts.</summary>
    public static MurphyDecomposition? Of(IReadOnlyList<BinaryForecast> forecasts)
    {
        if (forecasts.Count == 0) return null;
        double n = forecasts.Count;
        var overall = forecasts.Count(f => f.Happened) / n;
        double reliability = 0, resolution = 0;
        foreach (var group in forecasts.GroupBy(f => f.Probability))
        {
            var share = group.Count() / n;
            var was = group.Count(f => f.Happened) / (double)group.Count();
            reliability += share * (group.Key - was) * (group.Key - was);
            resolution += share * (was - overall) * (was - overall);
        }

        var score = forecasts.Sum(f => (f.Probability - (f.Happened ? 1 : 0)) * (f.Probability - (f.Happened ? 1 : 0))) / n;
        return new MurphyDecomposition(reliability, resolution, overall * (1 - overall), score);
    }
}
