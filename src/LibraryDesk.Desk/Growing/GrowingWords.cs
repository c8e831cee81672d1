using System.Globalization;
using LibraryDesk.Desk.Words;
using static LibraryDesk.Desk.Growing.GrowingText;

namespace LibraryDesk.Desk.Growing;

/// <summary>What growing figures say, in the reader's language. Sources are named as they are and stay so.</summary>
public static class GrowingWords
{
    /// <summary>The figure, such as "6 mm" or "2 to 4 years"; the term where there is no figure; null where there is neither.</summary>
    public static string? Figure(GrowingFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        var figure = (fact.Low, fact.High) switch
        {
            (null, null) => null,
            ({ } low, { } high) when low == high => Number(low),
            ({ } low, { } high) => Say[$"{Number(low)} to {Number(high)}"],
            ({ } low, null) => Say[$"at least {Number(low)}"],
            (null, { } high) => Say[$"up to {Number(high)}"],
        };
        if (figure is null) return fact.Term is { } term ? Term(term) : null;
        return fact.Unit is { } unit ? $"{figure} {Measures.Unit(Unit(unit), (fact.Low ?? fact.High)!.Value, fact.High)}" : figure;
    }

    /// <summary>What the figure rests on or adds; null where the source says no more.</summary>
    public static string? Statement(GrowingFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return fact.Statement is { } said ? GrowingFileText.Words[said] : null;
    }

    /// <summary>The kind a fact holds for; null for all.</summary>
    public static string? Kind(GrowingFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return fact.Kind switch { "hot" => Say["hot"], "sweet" => Say["sweet"], var other => other };
    }

    /// <summary>How the source was had.</summary>
    public static string Basis(GrowingFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return fact.Basis switch
        {
            "read" => Say["read"],
            "read (abstract)" => Say["read (abstract)"],
            "read second hand" => Say["read second hand"],
            "computed" => Say["computed"],
            "common practice" => Say["common practice"],
            "from memory" => Say["from memory"],
            var other => other,
        };
    }

    private static string Term(string term) => term switch
    {
        "annual" => Say["annual"],
        "annual or biennial" => Say["annual or biennial"],
        "biennial" => Say["biennial"],
        "perennial grown as annual" => Say["perennial grown as annual"],
        "dry" => Say["dry"],
        "dry or rinse" => Say["dry or rinse"],
        "ferment" => Say["ferment"],
        "rinse, do not ferment" => Say["rinse, do not ferment"],
        _ => term,
    };

    private static string Unit(string unit) => unit switch
    {
        "days" => Say["days"],
        "weeks" => Say["weeks"],
        "years" => Say["years"],
        "plants" => Say["plants"],
        "seeds in a gram" => Say["seeds in a gram"],
        "% of fresh weight" => Say["% of fresh weight"],
        _ => unit,
    };

    private static string Number(double value) => value.ToString("0.###", CultureInfo.CurrentCulture);
}
