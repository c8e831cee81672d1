using System.Globalization;

namespace LibraryDesk.Desk.Words;

/// <summary>
/// Lengths, distances and weights in the units a library's people use. All are kept in metric units; a library where people think in
/// inches, feet and ounces has these beside them, and may type them. The factors are exact: 1 in = 25.4 mm, 1 ft = 0.3048 m,
/// 1 oz = 28.349523125 g (NIST Special Publication 811, appendix B.8).
/// </summary>
public static class Measures
{
    private const double InchInMillimetres = 25.4;
    private const double FootInMetres = 0.3048;
    private const double OunceInGrams = 28.349523125;

    private static readonly Dictionary<string, (string Kind, double Factor)> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = ("length", 1), ["cm"] = ("length", 10), ["m"] = ("length", 1000), ["km"] = ("length", 1_000_000),
        ["in"] = ("length", InchInMillimetres), ["inch"] = ("length", InchInMillimetres), ["inches"] = ("length", InchInMillimetres), ["\""] = ("length", InchInMillimetres), ["”"] = ("length", InchInMillimetres),
        ["ft"] = ("length", FootInMetres * 1000), ["feet"] = ("length", FootInMetres * 1000), ["foot"] = ("length", FootInMetres * 1000), ["'"] = ("length", FootInMetres * 1000), ["’"] = ("length", FootInMetres * 1000),
        ["yd"] = ("length", 3 * FootInMetres * 1000), ["mi"] = ("length", 5280 * FootInMetres * 1000),
        ["mg"] = ("weight", 0.001), ["g"] = ("weight", 1), ["kg"] = ("weight", 1000), ["oz"] = ("weight", OunceInGrams), ["lb"] = ("weight", 16 * OunceInGrams),
    };

    /// <summary>True when inches, feet and ounces are shown beside metric units; set once, when the server starts.</summary>
    public static bool ShowsImperial { get; set; }

    /// <summary>The unit that follows a number: "mm", or "mm (0.87 in)" behind 22 and "mm (0.79–0.94 in)" behind 20 to 24.</summary>
    /// <param name="unit">The unit; anything but mm, cm, m and g has nothing beside it.</param>
    /// <param name="low">The number before it.</param>
    /// <param name="high">The other end; null when there is one number.</param>
    public static string? Unit(string? unit, double low, double? high = null) => ShowsImperial ? Both(unit, low, high) : unit;

    /// <summary>As <see cref="Unit"/> where a library shows both.</summary>
    public static string? Both(string? unit, double low, double? high = null)
    {
        if (Beside(unit) is not { } beside) return unit;
        var from = Figure(low / beside.In);
        return high is { } end && Figure(end / beside.In) is var to && to != from ? $"{unit} ({from}–{to} {beside.Unit})" : $"{unit} ({from} {beside.Unit})";
    }

    /// <summary>A distance in metres: "250 m", or "250 m (820 ft)".</summary>
    public static string Metres(double metres) => $"{metres.ToString("0.###", CultureInfo.CurrentCulture)} {Unit("m", metres)}";

    /// <summary>A weight in grams: "12.5 g", or "12.5 g (0.44 oz)".</summary>
    public static string Grams(decimal grams) => $"{grams.ToString("0.###", CultureInfo.CurrentCulture)} {Unit("g", (double)grams)}";

    /// <summary>Reads a number as typed, with a point or a comma, alone or with a unit of its own: "22", "2,2 cm", "7/8 in", "1 1/2\"".</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="unit">The unit asked for, which a bare number is in.</param>
    /// <param name="value">The number in <paramref name="unit"/>.</param>
    /// <returns>False when it is no number, or when its unit measures something else.</returns>
    public static bool TryRead(string? typed, string? unit, out double value)
    {
        value = 0;
        var text = (typed ?? "").Trim();
        var end = text.Length;
        while (end > 0 && !char.IsAsciiDigit(text[end - 1])) end--;
        if (!Number(text[..end].TrimEnd(), out value)) return false;
        var own = text[end..].Trim().TrimEnd('.', ',');
        if (own.Length == 0 || string.Equals(own, unit, StringComparison.OrdinalIgnoreCase)) return true;
        if (unit is null || !Units.TryGetValue(own, out var from) || !Units.TryGetValue(unit, out var to) || from.Kind != to.Kind) return false;
        value = value * from.Factor / to.Factor;
        return true;
    }

    // Half of Europe types a comma; nobody measures a plant in thousands. Rulers in inches read in halves, quarters and eighths.
    private static bool Number(string text, out double number)
    {
        var fraction = text.IndexOf('/', StringComparison.Ordinal);
        if (fraction < 0) return Plain(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, out number);
        number = 0;
        var before = text[..fraction].TrimEnd();
        var space = before.LastIndexOf(' ');
        if (!Plain(before[(space + 1)..], NumberStyles.None, out var over) || !Plain(text[(fraction + 1)..].Trim(), NumberStyles.None, out var under) || under == 0) return false;
        if (space >= 0 && !Plain(before[..space].TrimEnd(), NumberStyles.None, out number)) return false;
        number += over / under;
        return true;
    }

    private static bool Plain(string text, NumberStyles style, out double number) =>
        double.TryParse(text.Replace(',', '.'), style, CultureInfo.InvariantCulture, out number);

    private static (string Unit, double In)? Beside(string? unit) => unit switch
    {
        "mm" => ("in", InchInMillimetres),
        "cm" => ("in", InchInMillimetres / 10),
        "m" => ("ft", FootInMetres),
        "g" => ("oz", OunceInGrams),
        _ => null,
    };

    // Two figures at least, and no digit before the point is dropped.
    private static string Figure(double value) =>
        value >= 100 ? value.ToString("0", CultureInfo.CurrentCulture) : value >= 10 ? value.ToString("0.#", CultureInfo.CurrentCulture) : value.ToString("0.##", CultureInfo.CurrentCulture);
}
