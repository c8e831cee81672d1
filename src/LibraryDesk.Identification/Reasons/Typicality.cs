namespace LibraryDesk.Identification.Reasons;

/// <summary>How ordinary the answers are for the best candidate.</summary>
public enum TypicalityWord
{
    /// <summary>Such plants are common.</summary>
    Ordinary,

    /// <summary>Fewer than 1 plant in 20 is as odd: a hybrid, an odd form, or a wrong answer.</summary>
    Unusual,

    /// <summary>Fewer than 1 plant in 100 is as odd.</summary>
    VeryUnusual,
}

/// <summary>How well the whole set of answers goes with one candidate, apart from how it compares with others.</summary>
/// <param name="Candidate">Candidate id.</param>
/// <param name="Tail">Mid-p tail probability, 0 to 1: how often a plant of this candidate fits as badly or worse. 1 when nothing was answered.</param>
/// <param name="IsExact">True where all possible answers were gone through, false where plants were simulated.</param>
/// <param name="IfWrong">Trait id of the single answer whose being wrong would make the case ordinary; null where the case is ordinary or no single one would.</param>
/// <param name="TailIfWrong">The tail without that answer; null where there is none.</param>
public sealed record Typicality(string Candidate, double Tail, bool IsExact, string? IfWrong, double? TailIfWrong)
{
    /// <summary>Tail from which a case counts as ordinary.</summary>
    public const double OrdinaryFrom = 0.05;

    /// <summary>The tail in words.</summary>
    public TypicalityWord Word => Tail >= OrdinaryFrom ? TypicalityWord.Ordinary : Tail >= 0.01 ? TypicalityWord.Unusual : TypicalityWord.VeryUnusual;
}
