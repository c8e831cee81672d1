namespace LibraryDesk.Identification.Guides;

/// <summary>
/// Fits a log-normal to published bands ("30-70 usually, 70-155 rarely"). Each source's bands, with the open ends outside them,
/// are one grouped sample; the fit maximises the grouped likelihood with a weak prior on the spread, so that one band or an open band still gives one answer.
/// </summary>
internal static class LogNormalFit
{
    /// <summary>Spread of logarithms expected before any band is read: one plant part of one form varies by about a third. A band says what is usual, not all
    /// there is, so this counts for something even beside it; how much was chosen on descriptions held out.</summary>
    private const double UsualSd = 0.35;

    private const double LeastSd = 0.06;
    private const double MostSd = 1.2;

    /// <summary>Share of plants inside the published extremes taken together.</summary>
    private const double InsideAll = 0.95;

    private readonly record struct Band(double Low, double High, double Mass);

    public static (double MeanLog, double SdLog) Fit(IReadOnlyList<Cell> cells)
    {
        var bands = new List<Band>();
        foreach (var source in cells.GroupBy(c => c.Source)) AddBands([.. source.Where(c => c.Share > 0.01)], bands);
        var (mean, sd) = Start(bands);
        var stepMean = 0.5;
        var stepSd = 0.4;
        var best = Loss(bands, mean, sd);
        // Pattern search in (mean, log sd): two unknowns, smooth loss, no derivative needed.
        while (stepMean > 1e-5)
        {
            var improved = false;
            foreach (var (m, s) in new[] { (mean + stepMean, sd), (mean - stepMean, sd), (mean, sd * Math.Exp(stepSd)), (mean, sd * Math.Exp(-stepSd)) })
            {
                var spread = Math.Clamp(s, LeastSd, MostSd);
                var loss = Loss(bands, m, spread);
                if (loss < best - 1e-12)
                {
                    (best, mean, sd, improved) = (loss, m, spread, true);
                }
            }

            if (!improved)
            {
                stepMean /= 2;
                stepSd /= 2;
            }
        }

        return (mean, sd);
    }

    private static void AddBands(List<Cell> cells, List<Band> bands)
    {
        if (cells.Count == 0) return;
        var weight = cells[0].IsWeak ? 0.5 : 1.0;
        var total = cells.Sum(c => c.Share);
        var inside = cells.Count == 1 ? Math.Min(InsideAll, total) : InsideAll;
        foreach (var cell in cells) bands.Add(new Band(LogOf(cell.Low, double.NegativeInfinity), LogOf(cell.High, double.PositiveInfinity), weight * inside * cell.Share / total));
        var low = cells.Min(c => LogOf(c.Low, double.NegativeInfinity));
        var high = cells.Max(c => LogOf(c.High, double.PositiveInfinity));
        var openSides = (double.IsFinite(low) ? 1 : 0) + (double.IsFinite(high) ? 1 : 0);
        if (openSides == 0) return;
        var outside = weight * (1 - inside) / openSides;
        if (double.IsFinite(low)) bands.Add(new Band(double.NegativeInfinity, low, outside));
        if (double.IsFinite(high)) bands.Add(new Band(high, double.PositiveInfinity, outside));
    }

    private static double LogOf(double? value, double open) => value is > 0 ? Math.Log(value.Value) : open;

    private static (double Mean, double Sd) Start(List<Band> bands)
    {
        double sum = 0, mass = 0;
        foreach (var band in bands)
        {
            if (!double.IsFinite(band.Low) && !double.IsFinite(band.High)) continue;
            var middle = double.IsFinite(band.Low) && double.IsFinite(band.High) ? (band.Low + band.High) / 2 : double.IsFinite(band.Low) ? band.Low : band.High;
            sum += band.Mass * middle;
            mass += band.Mass;
        }

        return (mass > 0 ? sum / mass : 0, UsualSd);
    }

    private static double Loss(List<Band> bands, double mean, double sd)
    {
        var prior = Math.Log(sd / UsualSd) / 0.7;
        var loss = 0.2 * prior * prior;
        foreach (var band in bands)
        {
            var p = Normal.Between((band.Low - mean) / sd, (band.High - mean) / sd);
            loss -= band.Mass * Math.Log(Math.Max(p, 1e-300));
        }

        return loss;
    }
}
