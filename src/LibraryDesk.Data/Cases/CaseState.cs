namespace LibraryDesk.Data.Cases;

/// <summary>How far a case is. "Opinions" is not a state of its own: a case with opinions is still open or waiting.</summary>
public enum CaseState
{
    /// <summary>Being filed; only its owner sees it.</summary>
    Draft,
    /// <summary>In the queue.</summary>
    Open,
    /// <summary>A look was asked for, or the plant has not reached the stage that would tell.</summary>
    WaitingForLook,
    /// <summary>The desk has decided; can be reopened.</summary>
    Determined,
    /// <summary>Ended, with what was learned, or withdrawn by its owner.</summary>
    Closed,
}
