using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Checks that several rules share. Each gives a refusal, or null when all is well.</summary>
internal static class Checks
{
    // Seeds or milligrams: no source, far above what a community library keeps of one kind.
    private const long MostIncoming = 100_000_000;

    public static Refusal? Days(DateOnly on, DateOnly today, params IEnumerable<DateOnly> began)
    {
        if (on > today) return SeedRefusals.Future(on);
        foreach (var begun in began)
        {
            if (on < begun) return SeedRefusals.BeforeParent(on, begun);
        }

        return null;
    }

    /// <summary>Words for the ledger. It cannot forget, so what looks like an address or a telephone number is not let in.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="ask">Said where nothing was typed.</param>
    /// <param name="most">The most characters that have room.</param>
    public static Refusal? Text(string? text, string ask, int most = SeedTextLengths.Words)
    {
        if (string.IsNullOrWhiteSpace(text)) return new(SeedRefusals.TextEmptyCode, ask);
        if (text.Length > most) return new(SeedRefusals.TextLongCode, $"Keep it under {most} characters.");
        var digits = 0;
        foreach (var character in text)
        {
            digits = char.IsAsciiDigit(character) ? digits + 1 : character is ' ' or '-' or '/' ? digits : 0;
            if (character == '@' || digits > 8) return new(SeedRefusals.TextPersonalCode, "This goes into the ledger, which never forgets. Leave out addresses, telephone numbers and names of people.");
        }

        return null;
    }

    /// <summary>Where seed is kept; null or blank when not said.</summary>
    public static Refusal? Place(string? place)
    {
        if (string.IsNullOrWhiteSpace(place)) return null;
        return place.Length > SeedTextLengths.Name ? new(SeedRefusals.PlaceLongCode, $"Keep the place under {SeedTextLengths.Name} characters.") : Text(place, "");
    }

    /// <summary>The id of a species; null when not known.</summary>
    public static Refusal? Species(string? species) => species?.Length > SeedTextLengths.Species ? new(SeedRefusals.TextLongCode, $"Keep it under {SeedTextLengths.Species} characters.") : null;

    public static Outcome<Quantity> Take(SeedStock source, Quantity asked)
    {
        if (source.IsVoid || source.Stock is not { } stock) return SeedRefusals.NoSeed;
        if (asked.IsEmpty) return SeedRefusals.Nothing();
        if (asked.In(stock.Unit, source.ThousandSeedMilligrams) is not { } taken) return SeedRefusals.SeedWeight();
        if (taken.IsEmpty) return SeedRefusals.Nothing();
        return taken.Amount <= stock.Amount ? taken : SeedRefusals.MoreThanThere(taken, stock);
    }

    /// <summary>Seed that comes in or is counted: more than this at once is another unit or a slip of the finger.</summary>
    public static Refusal? Incoming(Quantity seed) => seed.Amount <= MostIncoming
        ? null
        : new Refusal(SeedRefusals.TooMuchCode, "More than 100 kg or 100,000,000 seeds at once looks like a slip. Check the figure and its unit.");

    public static Refusal? SeedWeight(long? thousandSeedMilligrams) => thousandSeedMilligrams is null or (> 0 and <= 100_000_000)
        ? null
        : new Refusal("seed.weight-wrong", "1000 seeds weigh between 0.001 g and 100 kg. Check the figure.");

    /// <summary>The hold to speak of: a recall before all others, since its packets are looked for.</summary>
    public static Hold? Standing(IReadOnlyList<Hold> holdsAbove) => holdsAbove.Where(hold => hold.Stands).MaxBy(hold => hold.Reason == Acts.HoldReason.Recall);
}
