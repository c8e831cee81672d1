using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Keeping;

/// <summary>When a lot is due: settings of the library.</summary>
/// <param name="Threshold">The share below which to regrow.</param>
/// <param name="IsOfInitial">True: a share of the lot's own initial value (FAO 2014, Genebank Standards, as remembered; the wording was not opened). False: an absolute share.</param>
/// <param name="FirstTestDays">Days after which a lot without a test is due for its first; FAO 2014, 4.3.1: 12 months after receipt at the latest.</param>
/// <param name="BetweenTestsDays">Days between tests where nothing can be forecast; the library's own setting.</param>
/// <param name="MostDays">The longest time between tests, forecast or not; the library's own setting.</param>
/// <param name="LeastSeeds">Regrow when fewer seeds are left; null for no such rule.</param>
public sealed record KeepingRule(double Threshold = 0.85, bool IsOfInitial = true, int FirstTestDays = 365, int BetweenTestsDays = 730, int MostDays = 1826, long? LeastSeeds = null);

/// <summary>Why and when a lot is due.</summary>
/// <param name="TestBy">When to test next; null when there is nothing left to test.</param>
/// <param name="RegrowNow">True when it is below the threshold, or too little is left.</param>
/// <param name="ThresholdShare">The share it is measured by, 0 to 1; null while it was never tested.</param>
/// <param name="Initial">First test; null while none.</param>
/// <param name="Latest">Last test; null while none.</param>
/// <param name="RestsOnForecast">True when <paramref name="TestBy"/> comes from the viability equation.</param>
/// <param name="CannotForecast">Why there is no forecast; null when there is one, or no test to start from.</param>
public sealed record KeepingPlan(
    DateOnly? TestBy,
    bool RegrowNow,
    double? ThresholdShare,
    ShareInterval? Initial,
    ShareInterval? Latest,
    bool RestsOnForecast,
    Refusal? CannotForecast)
{
    /// <summary>Plans a lot. A third of the time until the threshold is forecast to be reached (FAO 2014, 4.3.3, from memory), or the rule's fixed time.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="tests">Its tests; void ones are left out.</param>
    /// <param name="scientificName">For the viability equation; null when not known.</param>
    /// <param name="storage">How it is kept.</param>
    /// <param name="rule">The library's settings.</param>
    public static KeepingPlan For(Lot lot, IEnumerable<GerminationTest> tests, string? scientificName, StorageConditions storage, KeepingRule rule)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(tests);
        ArgumentNullException.ThrowIfNull(rule);
        var inOrder = tests.Where(test => !test.IsVoid && test.Lot == lot.Id).OrderBy(test => test.ReadOn).ThenBy(test => test.Id.Value).ToArray();
        var left = lot.Stock.In(SeedUnit.Seeds, lot.ThousandSeedMilligrams)?.Amount;
        var isLow = rule.LeastSeeds is { } least && left < least;
        if (inOrder.Length == 0) return new(lot.Stock.IsEmpty ? null : lot.MadeOn.AddDays(rule.FirstTestDays), isLow, null, null, null, false, null);
        var (first, last) = (inOrder[0], inOrder[^1]);
        var (initial, latest) = (Germination.Interval(first.Sown, first.Germinated), Germination.Interval(last.Sown, last.Germinated));
        var threshold = rule.IsOfInitial ? rule.Threshold * initial.Share : rule.Threshold;
        var isBelow = latest.Share < threshold;
        var (days, refusal) = Days(latest.Share, threshold, scientificName, storage, rule);
        return new(
            lot.Stock.IsEmpty ? null : last.ReadOn.AddDays(days),
            isLow || isBelow,
            threshold,
            initial,
            latest,
            refusal is null,
            refusal);
    }

    private static (int Days, Refusal? Refusal) Days(double share, double threshold, string? species, StorageConditions storage, KeepingRule rule)
    {
        // A test where all came up starts the forecast at the equation's edge; just below is as far as a count can tell.
        var forecast = ViabilityForecast.Make(species, Math.Clamp(share * 100, 0.1, 99.5), storage);
        return forecast.Match(
            made => ((int)Math.Clamp(made.DaysUntil(Math.Clamp(threshold * 100, 0.1, 99.4)) / 3, 1, rule.MostDays), (Refusal?)null),
            no => (Math.Min(rule.BetweenTestsDays, rule.MostDays), no));
    }
}
