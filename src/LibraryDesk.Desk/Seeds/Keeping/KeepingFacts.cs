using LibraryDesk.Data.Settings;
using LibraryDesk.Lineage.Keeping;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Keeping;

/// <summary>A viability forecast for a lot.</summary>
/// <param name="Forecast">The equation with its constants.</param>
/// <param name="From">The test it starts from.</param>
/// <param name="BelowOn">The day it is forecast to fall below the threshold; null when that is more than a hundred years off.</param>
public sealed record LotForecast(ViabilityForecast Forecast, DateOnly From, DateOnly? BelowOn)
{
    /// <summary>Viability in per cent on a day after the test.</summary>
    public double PercentOn(DateOnly day) => Forecast.PercentAfter(Math.Max(0, day.DayNumber - From.DayNumber));
}

/// <summary>How well a lot keeps: its plan, its forecast or why there is none, and the plan of its next test.</summary>
/// <param name="Rule">The library's rule.</param>
/// <param name="Storage">How its place is kept.</param>
/// <param name="Plan">What is due and when.</param>
/// <param name="Forecast">Null when there is none.</param>
/// <param name="CannotForecast">Why there is no forecast; null when there is one, or no test to start from.</param>
/// <param name="NextTest">A sequential test around the lot's threshold.</param>
public sealed record KeepingFacts(KeepingRule Rule, StorageConditions Storage, KeepingPlan Plan, LotForecast? Forecast, Refusal? CannotForecast, SequentialPlan NextTest)
{
    private const int FarthestYears = 100;

    /// <summary>The facts of a lot.</summary>
    /// <param name="lot">The lot, with the place it is kept in.</param>
    /// <param name="tests">Its tests.</param>
    /// <param name="species">Its species under the guide's id; null when not known.</param>
    /// <param name="settings">The library's choices.</param>
    public static KeepingFacts Of(Lot lot, IReadOnlyList<GerminationTest> tests, string? species, LibrarySettingsRow settings)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(tests);
        var rule = RuleOf(settings);
        var storage = StoreConditions.For(settings.Stores, lot.Place);
        var name = ScientificName(species);
        var plan = KeepingPlan.For(lot, tests, name, storage, rule);
        var threshold = plan.ThresholdShare ?? rule.Threshold;
        var last = tests.Where(test => !test.IsVoid).OrderBy(test => test.ReadOn).ThenBy(test => test.Id.Value).LastOrDefault();
        return new(rule, storage, plan, last is null ? null : ForecastFrom(last, name, storage, threshold), plan.CannotForecast, new SequentialPlan(Math.Clamp(threshold, 0.1, 0.98)));
    }

    /// <summary>The library's settings as a rule.</summary>
    public static KeepingRule RuleOf(LibrarySettingsRow settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new(settings.RegrowBelowPercent / 100.0, settings.RegrowOfInitial, settings.FirstTestDays, settings.TestEveryDays, LeastSeeds: settings.RegrowBelowSeeds > 0 ? settings.RegrowBelowSeeds : null);
    }

    /// <summary>The scientific name behind a guide's id: "capsicum-annuum" is "Capsicum annuum"; null for null.</summary>
    internal static string? ScientificName(string? species) => species is { Length: > 0 } ? char.ToUpperInvariant(species[0]) + species[1..].Replace('-', ' ') : null;

    private static LotForecast? ForecastFrom(GerminationTest last, string? name, StorageConditions storage, double threshold) =>
        ViabilityForecast.Make(name, Math.Clamp(100.0 * last.Germinated / last.Sown, 0.1, 99.5), storage).Match<LotForecast?>(
            made =>
            {
                var days = made.DaysUntil(Math.Clamp(threshold * 100, 0.1, 99.4));
                return new(made, last.ReadOn, days > FarthestYears * 365.25 ? null : last.ReadOn.AddDays((int)days));
            },
            _ => null);
}
