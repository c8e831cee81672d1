using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>What an amount of seed is counted in. A lot is kept in one unit all its life, so that its stock adds up exactly.</summary>
public enum SeedUnit
{
    /// <summary>Single seeds.</summary>
    Seeds,

    /// <summary>Milligrams.</summary>
    Milligrams,
}

/// <summary>An amount of seed, 0 or more, in whole seeds or whole milligrams.</summary>
public readonly record struct Quantity
{
    /// <param name="amount">0 or more, at most 10^12.</param>
    /// <param name="unit">Seeds or milligrams.</param>
    [JsonConstructor]
    public Quantity(long amount, SeedUnit unit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(amount);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(amount, Most);
        Amount = amount;
        Unit = unit;
    }

    /// <summary>The largest amount taken: far above any drawer, far below where arithmetic on the wire loses digits (2^53).</summary>
    public const long Most = 1_000_000_000_000;

    /// <summary>Whole seeds or whole milligrams.</summary>
    public long Amount { get; }

    /// <summary>What <see cref="Amount"/> counts.</summary>
    public SeedUnit Unit { get; }

    /// <summary>True when nothing is left.</summary>
    [JsonIgnore]
    public bool IsEmpty => Amount == 0;

    /// <summary>Counted seeds.</summary>
    public static Quantity OfSeeds(long seeds) => new(seeds, SeedUnit.Seeds);

    /// <summary>Weighed seed.</summary>
    public static Quantity OfMilligrams(long milligrams) => new(milligrams, SeedUnit.Milligrams);

    /// <summary>The same seed in another unit, rounded to the nearest whole; null when the units differ and the seed weight is not known.</summary>
    /// <param name="unit">The unit wanted.</param>
    /// <param name="thousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
    public Quantity? In(SeedUnit unit, long? thousandSeedMilligrams)
    {
        if (unit == Unit) return this;
        if (thousandSeedMilligrams is not > 0) return null;
        var exact = unit == SeedUnit.Seeds
            ? Amount * 1000m / thousandSeedMilligrams.Value
            : Amount * (decimal)thousandSeedMilligrams.Value / 1000m;
        var whole = decimal.Round(exact, MidpointRounding.ToEven);
        return whole <= Most ? new Quantity((long)whole, unit) : null;
    }

    /// <summary>Amounts of one unit together. Both must be in the same unit.</summary>
    public Quantity Plus(Quantity other)
    {
        if (other.Unit != Unit) throw new InvalidOperationException("Seeds and milligrams do not add up.");
        return new(checked(Amount + other.Amount), Unit);
    }

    /// <summary>What is left after a taking; null when more is asked than there is, or in another unit.</summary>
    public Quantity? Less(Quantity other) => other.Unit == Unit && other.Amount <= Amount ? new Quantity(Amount - other.Amount, Unit) : null;

    /// <summary>In words that can be translated.</summary>
    [JsonIgnore]
    public Sentence InWords => (Unit, Amount) switch
    {
        (SeedUnit.Milligrams, _) => Sentence.Of($"{Amount / 1000m:0.###} g"),
        (_, 1) => Sentence.Of($"{Amount} seed"),
        _ => Sentence.Of($"{Amount} seeds"),
    };

    /// <summary>In English words: "40 seeds", "12.5 g".</summary>
    public override string ToString() => InWords.ToString();
}
