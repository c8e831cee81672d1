namespace LibraryDesk.Identification.Reasons;

/// <summary>How much a trait says, in words, by the size of its weight in decibans.</summary>
public enum ReasonWord
{
    /// <summary>Under 5 decibans.</summary>
    Slight,

    /// <summary>5 decibans or more: about three times likelier.</summary>
    Some,

    /// <summary>10 decibans or more: ten times likelier.</summary>
    Strong,

    /// <summary>20 decibans or more: a hundred times likelier.</summary>
    Decides,
}

/// <summary>What one trait says between two candidates.</summary>
/// <param name="Trait">Trait id.</param>
/// <param name="Name">Trait name.</param>
/// <param name="Said">What was answered, in words; several answers are parted by semicolons.</param>
/// <param name="Decibans">Weight of evidence, above 0 for the first candidate and below 0 for the second.</param>
/// <param name="SourcesA">Ids of the sources the first candidate's frequencies come from; empty where its guide cells are missing.</param>
/// <param name="SourcesB">The same for the second.</param>
public sealed record Reason(string Trait, string Name, string Said, double Decibans, IReadOnlyList<string> SourcesA, IReadOnlyList<string> SourcesB)
{
    /// <summary>The weight in words.</summary>
    public ReasonWord Word => WordOf(Decibans);

    /// <summary>The word for a weight of either sign.</summary>
    public static ReasonWord WordOf(double decibans) => Math.Abs(decibans) switch
    {
        >= 20 => ReasonWord.Decides,
        >= 10 => ReasonWord.Strong,
        >= 5 => ReasonWord.Some,
        _ => ReasonWord.Slight,
    };
}

/// <summary>All reasons between two candidates.</summary>
/// <param name="CandidateA">Id of the candidate that positive weights speak for.</param>
/// <param name="CandidateB">Id of the candidate that negative weights speak for.</param>
/// <param name="TotalDecibans">10 log10 of P(answers | A) / P(answers | B).</param>
/// <param name="Reasons">One row per answered trait, heaviest first.</param>
/// <param name="TogetherDecibans">What the traits say together beyond the sum of the rows: weights do not add up under a mixture of forms.</param>
public sealed record ReasonTable(string CandidateA, string CandidateB, double TotalDecibans, IReadOnlyList<Reason> Reasons, double TogetherDecibans)
{
    /// <summary>Rows of 5 decibans or more that speak against the candidate the whole speaks for.</summary>
    public IReadOnlyList<Reason> Conflicts =>
        [.. Reasons.Where(r => Math.Abs(r.Decibans) >= 5 && Math.Sign(r.Decibans) == -Math.Sign(TotalDecibans))];
}
