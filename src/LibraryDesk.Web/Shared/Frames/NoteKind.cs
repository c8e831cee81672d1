namespace LibraryDesk.Web.Shared.Frames;

/// <summary>What a note is about. Colour, icon and words say the same.</summary>
public enum NoteKind
{
    /// <summary>Good to know.</summary>
    Know,
    /// <summary>Safe, done, fits.</summary>
    Go,
    /// <summary>Waiting, or to be leaned on lightly.</summary>
    Wait,
    /// <summary>Conflict, recall, refusal.</summary>
    Clash,
}
