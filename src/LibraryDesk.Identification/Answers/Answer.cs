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

/// <summary>A number or a range in the unit of a measured trait; one number has <c>Low == High</c>.</summary>
public readonly record struct Band(double Low, double High);

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

    /// <summary>One state, or either of several.</summary>
    public static Answer Of(string trait, params IReadOnlyList<string> states) => new(trait, states, []);

    /// <summary>A measured number in the trait's unit.</summary>
    public static Answer Measured(string trait, double value) => new(trait, [], [new Band(value, value)]);

    /// <summary>A measured range in the trait's unit.</summary>
    public static Answer Between(string trait, double low, double high) => new(trait, [], [new Band(low, high)]);

    /// <summary>Either of several measured numbers or ranges.</summary>
    public static Answer MeasuredAs(string trait, params IReadOnlyList<Band> bands) => new(trait, [], bands);
}
