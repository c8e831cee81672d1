using System.Globalization;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Web.Features.Guides.GuidesText;

namespace LibraryDesk.Web.Features.Guides;

/// <summary>Figures of a guide in words.</summary>
internal static class GuideWords
{
    /// <summary>The address of a guide, or of one of its kinds, in one version.</summary>
    /// <param name="version">Null for the version in use.</param>
    public static string Path(string guide, string? candidate, string? version) =>
        $"/guides/{guide}{(candidate is null ? "" : "/" + candidate)}{(version is null ? "" : "?v=" + Uri.EscapeDataString(version))}";

    /// <summary>The address of a trait of a guide in one version.</summary>
    public static string TraitPath(string guide, string trait, string? version) =>
        $"/guides/{guide}/trait?id={Uri.EscapeDataString(trait)}{(version is null ? "" : "&v=" + Uri.EscapeDataString(version))}";

    /// <summary>What a candidate shows in a trait, its forms weighed together.</summary>
    public static string Shown(CompiledGuide compiled, string candidate, Trait trait)
    {
        if (trait.Kind == TraitKind.Measured)
        {
            return compiled.UsualRange(candidate, null, trait.Id) is { } range ? Say[$"Mostly {Range(range.Low, range.High, trait.Unit)}."] : Say["Not scored."];
        }
        if (compiled.Frequencies(candidate, null, trait.Id) is not { } shares) return Say["Not scored."];
        var states = trait.States.Select((state, i) => (state.Name, Share: shares[i])).Where(s => s.Share >= 0.02).OrderByDescending(s => s.Share);
        return string.Join("; ", states.Select(s => $"{s.Name} ({HowOften(s.Share)})")) + ".";
    }

    /// <summary>The band that a share falls in, by the words the guides are written with.</summary>
    public static string HowOften(double share) => share switch
    {
        >= 0.95 => HowOften(Word.Always),
        >= 0.60 => HowOften(Word.Usually),
        >= 0.10 => HowOften(Word.Sometimes),
        >= 0.005 => HowOften(Word.Rarely),
        _ => HowOften(Word.Never),
    };

    /// <summary>A word of the guides in the reader's language.</summary>
    public static string HowOften(Word word) => word switch
    {
        Word.Always => Say["always"],
        Word.Usually => Say["usually"],
        Word.Sometimes => Say["sometimes"],
        Word.Rarely => Say["rarely"],
        _ => Say["never"],
    };

    /// <summary>A share as a per cent without a false decimal.</summary>
    public static string PerCent(double share) => share switch
    {
        < 0.01 => Say["under 1 %"],
        > 0.99 => Say["over 99 %"],
        _ => Say[$"{share * 100:0} %"],
    };

    /// <summary>A length as a person measures it.</summary>
    public static string Range(double low, double high, string? unit)
    {
        var format = high < 10 ? "0.#" : "0";
        return Say[$"{low.ToString(format, CultureInfo.CurrentCulture)} to {high.ToString(format, CultureInfo.CurrentCulture)} {Measures.Unit(unit, low, high)}"].TrimEnd();
    }

    public static string Says(Cell cell) => cell switch
    {
        { P: { } share, N: { } counted } => Say[$"{share * 100:0.#} % of {counted}"],
        { P: { } share } => Say[$"{share * 100:0.#} %"],
        { Word: { } word } => HowOften(word),
        _ => Say["stated"],
    };

    public static string What(Cell cell, Trait trait) => cell switch
    {
        { State: { } state } => trait.FindState(state)?.Name ?? state,
        { Low: { } low, High: { } high } => Range(low, high, trait.Unit),
        { Low: { } low } => Say[$"{low:0.#} {Measures.Unit(trait.Unit, low)} or more"],
        { High: { } high } => Say[$"{high:0.#} {Measures.Unit(trait.Unit, high)} or less"],
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
            Effort.Cut => Say["Cut open"],
            Effort.Touch => Say["Touch"],
            _ => Say["Look only"],
        };
        return trait.Minutes < 1.5 ? Say[$"{deed}, 1 minute"] : Say[$"{deed}, {trait.Minutes:0} minutes"];
    }
}
