namespace LibraryDesk.Identification.Guides;

/// <summary>How the states of a trait relate.</summary>
public enum TraitKind
{
    /// <summary>States without an order, such as colours.</summary>
    Unordered,

    /// <summary>States in order, such as one, two, three or more; neighbours are confused sooner than far ones.</summary>
    Ordered,

    /// <summary>A number in a unit.</summary>
    Measured,
}

/// <summary>What a person must do to answer.</summary>
public enum Effort
{
    /// <summary>Looking is enough.</summary>
    Look,

    /// <summary>The plant must be touched or held.</summary>
    Touch,

    /// <summary>Something must be cut open.</summary>
    Cut,
}

/// <summary>Something to be looked at on a plant.</summary>
/// <param name="Name">The published or everyday name of the trait.</param>
/// <param name="Question">The plain question; empty only for traits that are never asked.</param>
/// <param name="Hint">How to look, or null.</param>
/// <param name="Why">What it tells, or null.</param>
/// <param name="Part">Id of the plant part it needs.</param>
/// <param name="Minutes">How long the look takes, in minutes; above 0.</param>
/// <param name="Unit">Unit of a measured trait, null otherwise.</param>
/// <param name="VariesWithinPlant">True where two flowers or fruits of one plant can differ.</param>
/// <param name="Asked">False for what is only accepted as already known (taste, pungency, aroma).</param>
/// <param name="Caution">Id of the caution to show before the question, or null.</param>
/// <param name="Descriptor">Published descriptor name or code, or null.</param>
/// <param name="States">States in order for ordered traits; empty for measured ones.</param>
/// <param name="Confused">Groups of state ids that people swap easily, such as shades of one colour. Empty when none.</param>
/// <param name="Observer">How reliable answers to this trait are; null takes the guide's.</param>
public sealed record Trait(
    string Id,
    string Name,
    string Question,
    string? Hint,
    string? Why,
    string Part,
    Effort Effort,
    double Minutes,
    TraitKind Kind,
    string? Unit,
    bool VariesWithinPlant,
    bool Asked,
    string? Caution,
    string? Descriptor,
    IReadOnlyList<State> States,
    IReadOnlyList<IReadOnlyList<string>> Confused,
    string? Source,
    ObserverReliability? Observer = null)
{
    /// <summary>The state of that id, or null.</summary>
    public State? FindState(string id) => StateIndex(id) is >= 0 and var at ? States[at] : null;

    /// <summary>Place of a state in <see cref="States"/>, or -1; always -1 for a measured trait.</summary>
    public int StateIndex(string id)
    {
        for (var s = 0; s < States.Count; s++)
        {
            if (States[s].Id == id) return s;
        }

        return -1;
    }
}

/// <summary>One state of a trait.</summary>
/// <param name="Drawing">Name of the drawing that shows it, or null.</param>
public sealed record State(string Id, string Name, string? Hint, string? Drawing);
