using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Reading;

/// <summary>Why a case is closed, where nobody wrote a note: kept in English, told in the reader's language.</summary>
internal static class ClosingNotes
{
    public const string Withdrawn = "Withdrawn by its owner.";

    public const string Ended = "Ended by its owner.";

    /// <summary>The note as the reader sees it; what a person wrote stays as written.</summary>
    public static string? InWords(string? note) => note switch
    {
        Withdrawn => Say["Withdrawn by its owner."],
        Ended => Say["Ended by its owner."],
        _ => note,
    };
}
