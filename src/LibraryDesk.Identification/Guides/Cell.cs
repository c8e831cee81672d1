namespace LibraryDesk.Identification.Guides;

/// <summary>How often, as a published description words it.</summary>
public enum Word
{
    /// <summary>The wording excludes the state: about 0.002.</summary>
    Never,

    /// <summary>Rarely, occasionally, bracketed extremes: about 0.03.</summary>
    Rarely,

    /// <summary>Sometimes, lists without a frequency word: about 0.35.</summary>
    Sometimes,

    /// <summary>Usually, mostly, ranges outside brackets: about 0.80.</summary>
    Usually,

    /// <summary>One state, no hedge: about 0.98.</summary>
    Always,
}

/// <summary>One published frequency: of a candidate, profile or form, for one state or one band of a measured trait.</summary>
/// <param name="Of">Candidate id, <c>candidate/profile</c> or <c>candidate/form</c>.</param>
/// <param name="State">State id; null for measured traits.</param>
/// <param name="Low">Lower end of the band of a measured trait, in the trait's unit; null when open.</param>
/// <param name="High">Upper end of the band of a measured trait; null when open.</param>
/// <param name="Word">The word of the source; null when <paramref name="P"/> is given.</param>
/// <param name="P">The counted share, 0 to 1; null when a word is given.</param>
/// <param name="N">Number of plants counted; null when not counted.</param>
/// <param name="Basis">How the source was read; "from memory", "inferred", "not listed" or "not named" halves the weight.</param>
/// <param name="Line">Line of the guide file the cell stands on, 1-based; 0 when not read from a file.</param>
public sealed record Cell(
    string Of,
    string Trait,
    string? State,
    double? Low,
    double? High,
    Word? Word,
    double? P,
    int? N,
    string? Basis,
    string Source,
    int Line)
{
    /// <summary>The id of the source that stands for what was written from memory.</summary>
    public const string Memory = "memory";

    /// <summary>True where nobody opened a source for it, so that it weighs half.</summary>
    public bool IsWeak => Source == Memory
        || (Basis is not null && (Basis.StartsWith("from memory", StringComparison.OrdinalIgnoreCase)
            || Basis.StartsWith("inferred", StringComparison.OrdinalIgnoreCase)
            || Basis.StartsWith("not listed", StringComparison.OrdinalIgnoreCase)
            || Basis.StartsWith("not named", StringComparison.OrdinalIgnoreCase)));

    /// <summary>
    /// True where the cell only spells out what the words of its row leave open, such as the fifth that "usually" leaves to the other states, or what is pooled
    /// over other kinds for a state that no source lists. It is reckoned with, but no source says it of this kind: it neither makes a row sourced nor stands
    /// without the words beside it.
    /// </summary>
    public bool IsLeftover => Source is "remainder" or "pooled";

    /// <summary>The share the cell states, 0 to 1. The word defaults are a convention of the guides, not measurements.</summary>
    public double Share => P ?? Word switch
    {
        Guides.Word.Always => 0.98,
        Guides.Word.Usually => 0.80,
        Guides.Word.Sometimes => 0.35,
        Guides.Word.Rarely => 0.03,
        _ => 0.002,
    };
}

/// <summary>Plants of known identity that showed a state. A count of 0 says that the trait was tabulated and the state not seen.</summary>
/// <param name="Of">Candidate id or <c>candidate/form</c>.</param>
/// <param name="State">State id; null for a measured trait.</param>
/// <param name="Count">How many plants; not negative, fractions where one plant showed several states.</param>
/// <param name="MeanLog">Measured traits: mean of the natural logarithms of the values.</param>
/// <param name="SdLog">Measured traits: standard deviation of the natural logarithms, above 0.</param>
/// <param name="From">Where the plants come from, e.g. <c>determined</c> or <c>labelled</c>.</param>
public sealed record CountRow(
    string Of,
    string Trait,
    string? State,
    double Count,
    double? MeanLog,
    double? SdLog,
    string From,
    int Line);
