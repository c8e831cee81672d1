using System.Globalization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Web.Features.Guides;

/// <summary>Figures of a guide in words.</summary>
internal static class GuideWords
{
    /// <summary>The band that a share falls in, by the words the guides are written with.</summary>
    public static string HowOften(double share) => share switch
    {
        >= 0.95 => "always",
        >= 0.60 => "usually",
        >= 0.10 => "sometimes",
        >= 0.005 => "rarely",
        _ => "never",
    };

    /// <summary>A share as a per cent without a false decimal.</summary>
    public static string PerCent(double share) => share switch
    {
        < 0.01 => "under 1 %",
        > 0.99 => "over 99 %",
        _ => string.Create(CultureInfo.CurrentCulture, $"{share * 100:0} %"),
    };

    /// <summary>A length as a person measures it.</summary>
    public static string Range(double low, double high, string? unit)
    {
        var format = high < 10 ? "0.#" : "0";
        return $"{low.ToString(format, CultureInfo.CurrentCulture)} to {high.ToString(format, CultureInfo.CurrentCulture)} {unit}".TrimEnd();
    }

    public static string Says(Cell cell) => cell switch
    {
        { P: { } share, N: { } counted } => string.Create(CultureInfo.CurrentCulture, $"{share * 100:0.#} % of {counted}"),
        { P: { } share } => string.Create(CultureInfo.CurrentCulture, $"{share * 100:0.#} %"),
        { Word: { } word } => word.ToString().ToLowerInvariant(),
        _ => "stated",
    };

    public static string What(Cell cell, Trait trait) => cell switch
    {
        { State: { } state } => trait.FindState(state)?.Name ?? state,
        { Low: { } low, High: { } high } => Range(low, high, trait.Unit),
        { Low: { } low } => $"{low.ToString("0.#", CultureInfo.CurrentCulture)} {trait.Unit} or more",
        { High: { } high } => $"{high.ToString("0.#", CultureInfo.CurrentCulture)} {trait.Unit} or less",
        _ => "",
    };

    /// <summary>
    /// How far two measured ranges (the middle 80 % of log-normal spreads) lie apart, 0 to 1: total variation of two normal laws of the
    /// logarithm with their mean spread, 2 Phi(gap / 2 sigma) - 1 (handbook formula for equal spreads).
    /// </summary>
    public static double Apart((double Low, double High) a, (double Low, double High) b)
    {
        // 80 % of a normal law lies within 1.2816 standard deviations.
        var spread = (Math.Log(a.High / a.Low) + Math.Log(b.High / b.Low)) / (4 * 1.2816);
        var gap = Math.Abs(Math.Log(a.Low * a.High / (b.Low * b.High))) / 2;
        var z = gap / (2 * Math.Max(spread, 1e-6));
        // Logistic stand-in for the normal integral, within 0.01 (H. C. Tocher 1963, The Art of Simulation; from memory). It only orders a list.
        return (2 / (1 + Math.Exp(-1.702 * z))) - 1;
    }

    public static string EffortOf(Trait trait)
    {
        var deed = trait.Effort switch
        {
            Effort.Cut => "Cut open",
            Effort.Touch => "Touch",
            _ => "Look only",
        };
        return trait.Minutes < 1.5 ? $"{deed}, 1 minute" : string.Create(CultureInfo.CurrentCulture, $"{deed}, {trait.Minutes:0} minutes");
    }
}
