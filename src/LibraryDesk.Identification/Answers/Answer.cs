using System.Globalization;

namespace LibraryDesk.Identification.Answers;

/// <summary>How sure a person is of an answer.</summary>
public enum Sureness
{
    /// <summary>Sure.</summary>
    Sure,

    /// <summary>Fairly sure.</summary>
    Fairly,

    /// <summary>A faint impression.</summary>
    Faint,
}

/// <summary>A number or a range in the unit of a measured trait; one number has <c>Low == High</c>. An open upper end is infinity, an open lower end 0.</summary>
public readonly record struct Band(double Low, double High)
{
    /// <summary>Reads a number such as 12, a range such as 12..15 or 12-15, or an open end such as &gt;=12; null for anything else.</summary>
    public static Band? Parse(string text)
    {
        if (text.StartsWith(">=", StringComparison.Ordinal)) return Number(text.AsSpan(2)) is { } least ? new Band(least, double.PositiveInfinity) : null;
        if (text.StartsWith("<=", StringComparison.Ordinal)) return Number(text.AsSpan(2)) is { } most ? new Band(0, most) : null;
        if (Number(text) is { } value) return new Band(value, value);
        var (at, length) = (text.IndexOf("..", StringComparison.Ordinal), 2);
        // A minus sign parts two numbers only after the first digit.
        if (at < 0) (at, length) = (text.IndexOf('-', Math.Min(1, text.Length)), 1);
        if (at < 0) return null;
        return Number(text.AsSpan(0, at)) is { } low && Number(text.AsSpan(at + length)) is { } high ? new Band(low, high) : null;
    }

    private static double? Number(ReadOnlySpan<char> text) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
}

/// <summary>What one person says of one trait at one look. "Not sure" and "can't see it yet" are no answers: leave them out.</summary>
public sealed record Answer
{
    private Answer(string trait, IReadOnlyList<string> states, IReadOnlyList<Band> bands)
    {
        Trait = trait;
        States = states;
        Bands = bands;
    }

    /// <summary>Trait id.</summary>
    public string Trait { get; }

    /// <summary>State ids: one, or several for "either of these". Empty for a measured trait.</summary>
    public IReadOnlyList<string> States { get; }

    /// <summary>Numbers or ranges of a measured trait, several for "either of these". Empty for other traits.</summary>
    public IReadOnlyList<Band> Bands { get; }

    /// <summary>How sure the person is.</summary>
    public Sureness Sure { get; init; } = Sureness.Sure;

    /// <summary>Who answered; people at one look share what was there to be seen.</summary>
    public string Person { get; init; } = "";

    /// <summary>Which look; two looks may see two flowers of one plant.</summary>
    public string Look { get; init; } = "";

    /// <summary>Row the answer came from, 1-based, for faults; 0 takes the place in the list.</summary>
    public int Row { get; init; }

    /// <summary>An answer with all that a file says of it; see the properties.</summary>
    public static Answer Read(string trait, IReadOnlyList<string> states, IReadOnlyList<Band> bands, Sureness sure, string person, string look, int row) =>
        new(trait, states, bands) { Sure = sure, Person = person, Look = look, Row = row };

    /// <summary>One state, or either of several.</summary>
    public static Answer Of(string trait, params IReadOnlyList<string> states) => new(trait, states, []);

    /// <summary>A measured number in the trait's unit.</summary>
    public static Answer Measured(string trait, double value) => new(trait, [], [new Band(value, value)]);

    /// <summary>A measured range in the trait's unit.</summary>
    public static Answer Between(string trait, double low, double high) => new(trait, [], [new Band(low, high)]);

    /// <summary>Either of several measured numbers or ranges.</summary>
    public static Answer MeasuredAs(string trait, params IReadOnlyList<Band> bands) => new(trait, [], bands);
}
