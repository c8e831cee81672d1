using System.Globalization;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>An amount of seed as typed: a number and its unit.</summary>
public static class AmountEntry
{
    public const string Code = "amount.shape";

    /// <summary>The units to choose from.</summary>
    public const string Seeds = "seeds";

    public const string Grams = "g";

    /// <summary>Reads an amount. Whole seeds, or grams with a comma or a point, or a weight with its own unit, such as 2 oz.</summary>
    public static Outcome<Quantity> Read(string? number, string? unit)
    {
        if (unit == Grams)
        {
            if (!Measures.TryRead(number, Grams, out var grams) || grams is < 0 or > Quantity.Most / 1000)
                return new Refusal(Code, "Give the weight in grams, such as 12.5.");
            return Quantity.OfMilligrams((long)Math.Round(grams * 1000));
        }
        if (!long.TryParse((number ?? "").Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var seeds) || seeds > Quantity.Most)
            return new Refusal(Code, "Give the number of seeds as a whole number, such as 200.");
        return Quantity.OfSeeds(seeds);
    }

    /// <summary>Weight of 1000 seeds in grams as typed; null for an empty field.</summary>
    public static Outcome<ThousandSeed> ReadThousand(string? grams)
    {
        if (string.IsNullOrWhiteSpace(grams)) return new ThousandSeed(null);
        return Measures.TryRead(grams, Grams, out var weight) && weight is > 0 and < 1_000_000
            ? new ThousandSeed((long)Math.Round(weight * 1000))
            : new Refusal(Code, "Give the weight of 1000 seeds in grams, such as 6.5, or leave it empty.");
    }

    /// <summary>A distance in whole metres as typed, or with its own unit, such as 100 ft; null for an empty field or something else.</summary>
    public static int? ReadMetres(string? distance) =>
        Measures.TryRead(distance, "m", out var metres) && metres is >= 0 and <= 1_000_000 ? (int)Math.Round(metres) : null;

    /// <summary>A day as a date field posts it; null for an empty field or something else.</summary>
    public static DateOnly? ReadDay(string? day) =>
        DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read) ? read : null;

    /// <summary>A count as typed; null for an empty field or something else.</summary>
    public static int? ReadCount(string? number) =>
        int.TryParse((number ?? "").Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : null;
}

/// <summary>A seed weight that may be unknown.</summary>
public sealed record ThousandSeed(long? Milligrams);
