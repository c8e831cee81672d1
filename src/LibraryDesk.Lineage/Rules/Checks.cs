using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Checks that several rules share. Each gives a refusal, or null when all is well.</summary>
internal static class Checks
{
    public const int MostText = 300;

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
    public static Refusal? Text(string? text, string what)
    {
        if (string.IsNullOrWhiteSpace(text)) return new(SeedRefusals.TextEmptyCode, $"Say {what} in a few words.");
        if (text.Length > MostText) return new(SeedRefusals.TextLongCode, $"Keep it under {MostText} characters.");
        var digits = 0;
        foreach (var character in text)
        {
            digits = char.IsAsciiDigit(character) ? digits + 1 : character is ' ' or '-' or '/' ? digits : 0;
            if (character == '@' || digits > 8) return new(SeedRefusals.TextPersonalCode, "This goes into the ledger, which never forgets. Leave out addresses, telephone numbers and names of people.");
        }

        return null;
    }

    public static Outcome<Quantity> Take(SeedStock source, Quantity asked)
    {
        if (source.IsVoid || source.Stock is not { } stock) return SeedRefusals.NotThere("seed");
        if (asked.IsEmpty) return SeedRefusals.Nothing();
        if (asked.In(stock.Unit, source.ThousandSeedMilligrams) is not { } taken) return SeedRefusals.SeedWeight();
        if (taken.IsEmpty) return SeedRefusals.Nothing();
        return taken.Amount <= stock.Amount ? taken : SeedRefusals.MoreThanThere(taken, stock);
    }

    public static Refusal? SeedWeight(long? thousandSeedMilligrams) => thousandSeedMilligrams is null or (> 0 and <= 100_000_000)
        ? null
        : new Refusal("seed.weight-wrong", "1000 seeds weigh between 0.001 g and 100 kg. Check the figure.");

    public static Hold? Standing(IReadOnlyList<Hold> holdsAbove) => holdsAbove.FirstOrDefault(hold => hold.Stands);
}
