namespace LibraryDesk.Data.Cases;

/// <summary>What was answered to a trait question. Only <see cref="States"/> and <see cref="Measure"/> can move the odds.</summary>
public enum AnswerKind
{
    /// <summary>One state, or "either of these".</summary>
    States,
    /// <summary>A number or a range in the trait's unit.</summary>
    Measure,
    CantSeeYet,
    NotSure,
}
