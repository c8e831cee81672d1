namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A candidate with its qualifier, as somebody names it.</summary>
/// <param name="Taxon">Candidate id of the guide, or <see cref="CannotTell"/>.</param>
/// <param name="Qualifier">One of <see cref="Qualifiers"/>.</param>
public readonly record struct NamedTaxon(string Taxon, string Qualifier = Qualifiers.None)
{
    /// <summary>An opinion that these looks do not tell: kept, but it speaks for no candidate.</summary>
    public const string CannotTell = "cannot-tell";

    /// <summary>True where a candidate is named.</summary>
    public bool Tells => Taxon != CannotTell;

    /// <summary>
    /// Two say the same when they name one candidate and either both say "aff." or neither does: "cf." only hedges the name,
    /// "aff." says that the plant is akin to it and not it (Bengtson 1988, Palaeontology 31: 223-227).
    /// </summary>
    public bool AgreesWith(NamedTaxon other) => Tells && Taxon == other.Taxon && IsAffinity == other.IsAffinity;

    internal bool IsAffinity => Qualifier == Qualifiers.Aff;
}

/// <summary>What can stand beside a species name.</summary>
public static class Qualifiers
{
    /// <summary>The name without reserve.</summary>
    public const string None = "";

    /// <summary>To be compared with it: probably this one.</summary>
    public const string Cf = "cf.";

    /// <summary>Akin to it, but not it.</summary>
    public const string Aff = "aff.";

    public static IReadOnlyList<string> All { get; } = [None, Cf, Aff];
}
