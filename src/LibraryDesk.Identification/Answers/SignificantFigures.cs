namespace LibraryDesk.Identification.Answers;

/// <summary>Rounds measures for people: so many figures that count, and never with an exponent when written with <see cref="Format"/>.</summary>
public static class SignificantFigures
{
    /// <summary>Writes a rounded measure without exponent and without zeros that say nothing.</summary>
    public const string Format = "0.#########";

    /// <summary>The value with so many significant figures.</summary>
    /// <param name="value">Any number; one that is not finite comes back as it is.</param>
    /// <param name="figures">1 to 15.</param>
    public static double Round(double value, int figures)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(figures, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(figures, 15);
        if (value == 0 || !double.IsFinite(value)) return value;
        var decimals = figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (decimals >= 0) return Math.Round(value, Math.Min(decimals, 15), MidpointRounding.AwayFromZero);
        var unit = Math.Pow(10, -decimals);
        return Math.Round(value / unit, MidpointRounding.AwayFromZero) * unit;
    }
}
