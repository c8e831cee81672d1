namespace LibraryDesk.Web.Shared.Odds;

/// <summary>One candidate of a ranking as shown. Plain values, so that the page decides where they come from.</summary>
/// <param name="Name">The candidate's name.</param>
/// <param name="InTwenty">Seeds out of twenty, already rounded so that all lines together make twenty at most.</param>
public sealed record OddsLine(string Name, int InTwenty)
{
    /// <summary>True when <see cref="Name"/> is a Latin name and is set in italics.</summary>
    public bool Scientific { get; init; } = true;

    /// <summary>A short plain line under the name; null for none.</summary>
    public string? Common { get; init; }

    /// <summary>The exact share of one, shown on demand; null when it is not to be shown.</summary>
    public double? Share { get; init; }

    /// <summary>Words for the odds that differ from the usual, e.g. "more than 19 in 20"; null for the usual.</summary>
    public string? Words { get; init; }
}
