namespace LibraryDesk.Identification.Answers;

/// <summary>Why an answer cannot be taken.</summary>
/// <param name="Code">Stable code, e.g. <c>unknown-state</c>.</param>
/// <param name="Row">Row the answer came from, 1-based.</param>
/// <param name="Message">What is wrong and what would be right, for the person.</param>
public sealed record EvidenceFault(string Code, int Row, string Trait, string Message)
{
    /// <summary>No such trait in the guide.</summary>
    public const string UnknownTrait = "unknown-trait";

    /// <summary>No such state of the trait.</summary>
    public const string UnknownState = "unknown-state";

    /// <summary>No state or number given.</summary>
    public const string NothingSaid = "nothing-said";

    /// <summary>A state for a measured trait, or a number for another.</summary>
    public const string WrongKind = "wrong-kind";

    /// <summary>Not a number, zero, negative, or a range upside down.</summary>
    public const string NotAMeasure = "not-a-measure";

    /// <summary>Far outside anything the guide knows: usually another unit.</summary>
    public const string AbsurdMeasure = "absurd-measure";

    /// <summary>One person said two things of one trait at one look.</summary>
    public const string Contradictory = "contradictory";

    /// <summary>More answers than a case can hold.</summary>
    public const string TooMany = "too-many";

    /// <inheritdoc/>
    public override string ToString() => $"row {Row}: {Message}";
}

/// <summary>Evidence, or every fault found in the answers.</summary>
/// <param name="Evidence">The evidence; null when there are faults.</param>
/// <param name="Faults">In order of rows; empty when all answers can be taken.</param>
public sealed record EvidenceCheck(Evidence? Evidence, IReadOnlyList<EvidenceFault> Faults);
