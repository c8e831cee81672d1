using LibraryDesk.Lineage.Numbers;

namespace LibraryDesk.Lineage.Keeping;

/// <summary>How seed is kept. Null where nobody knows, and then nothing is forecast.</summary>
/// <param name="MoisturePercent">Seed moisture in per cent of fresh weight.</param>
/// <param name="TemperatureCelsius">Storage temperature in degrees Celsius.</param>
public sealed record StorageConditions(double? MoisturePercent, double? TemperatureCelsius);

/// <summary>
/// The seed viability equation (Ellis &amp; Roberts 1980, Annals of Botany 45:13-30): v = Ki - p/sigma,
/// sigma = 10^(KE - CW log10 m - CH t - CQ t^2), with v and Ki as normal deviates, p in days, m in per cent of fresh weight, t in degrees Celsius.
/// </summary>
public sealed class ViabilityForecast
{
    public const string NoConstantsCode = "forecast.no-constants";
    public const string NoConditionsCode = "forecast.no-conditions";
    public const string OutsideCode = "forecast.outside";
    public const string NoStartCode = "forecast.no-start";

    private ViabilityForecast(ViabilityConstants constants, double ki, double sigmaDays)
    {
        (Constants, Ki, SigmaDays) = (constants, ki, sigmaDays);
    }

    /// <summary>The constants it rests on.</summary>
    public ViabilityConstants Constants { get; }

    /// <summary>The initial viability as a normal deviate.</summary>
    public double Ki { get; }

    /// <summary>Days in which viability falls by one normal deviate.</summary>
    public double SigmaDays { get; }

    /// <summary>Makes a forecast, or says why it cannot be made.</summary>
    /// <param name="species">Scientific name; null when not known.</param>
    /// <param name="initialPercent">Viability at the start in per cent, above 0 and below 100.</param>
    /// <param name="storage">How it is kept.</param>
    public static Outcome<ViabilityForecast> Make(string? species, double initialPercent, StorageConditions storage)
    {
        ArgumentNullException.ThrowIfNull(storage);
        if (species is null) return new Refusal(NoConstantsCode, "Cannot forecast: no constants are published for an unknown species. Test it by sowing instead.");
        if (ViabilityConstants.For(species) is not { } constants) return new Refusal(NoConstantsCode, $"Cannot forecast: no constants are published for {species}. Test it by sowing instead.");
        return Make(constants, initialPercent, storage);
    }

    /// <summary>Makes a forecast from given constants, or says why it cannot be made.</summary>
    public static Outcome<ViabilityForecast> Make(ViabilityConstants constants, double initialPercent, StorageConditions storage)
    {
        ArgumentNullException.ThrowIfNull(constants);
        ArgumentNullException.ThrowIfNull(storage);
        if (storage.MoisturePercent is not { } moisture || storage.TemperatureCelsius is not { } temperature) return new Refusal(NoConditionsCode, "Cannot forecast: the moisture of the seed or the temperature of the store is not known. Test it by sowing instead.");

        // Between these the equation was fitted for most species (Ellis & Hong 2007, limits cited from memory); it is not stretched beyond.
        if (moisture is < 3 or > 18 || temperature is < -20 or > 60) return new Refusal(OutsideCode, "Cannot forecast: the equation holds for 3 to 18 % moisture and -20 to 60 degrees Celsius only. Test it by sowing instead.");
        if (initialPercent is not (> 0 and < 100)) return new Refusal(NoStartCode, "Cannot forecast from 0 or 100 %: the equation needs a start between. Test more seeds.");
        var sigma = Math.Pow(10, constants.Ke - (constants.Cw * Math.Log10(moisture)) - (constants.Ch * temperature) - (constants.Cq * temperature * temperature));
        return new ViabilityForecast(constants, NormalDistribution.Deviate(initialPercent / 100), sigma);
    }

    /// <summary>Viability in per cent after some days.</summary>
    public double PercentAfter(double days) => 100 * NormalDistribution.Below(Ki - (days / SigmaDays));

    /// <summary>Days until viability has fallen to a value in per cent; 0 when it is there already.</summary>
    public double DaysUntil(double percent)
    {
        if (percent is not (> 0 and < 100)) throw new ArgumentOutOfRangeException(nameof(percent), percent, "Between 0 and 100.");
        return Math.Max(0, (Ki - NormalDistribution.Deviate(percent / 100)) * SigmaDays);
    }
}
