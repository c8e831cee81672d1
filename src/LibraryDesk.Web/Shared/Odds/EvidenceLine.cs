namespace LibraryDesk.Web.Shared.Odds;

/// <summary>One piece of evidence for or against a candidate.</summary>
/// <param name="Statement">What was seen, e.g. "Yellow-green spots in the flower".</param>
/// <param name="Weight">How much it weighs.</param>
public sealed record EvidenceLine(string Statement, TallyWeight Weight)
{
    /// <summary>Who answered, when, how clear; null for none.</summary>
    public string? Note { get; init; }

    /// <summary>What the line opens to: state, source, guide version, decibans. Empty when there is nothing to open.</summary>
    public IReadOnlyList<Fact> Facts { get; init; } = [];
}

/// <summary>A name and its value, e.g. "Source" and "Barboza et al. 2022, treatment 2b".</summary>
public sealed record Fact(string Name, string Value);
