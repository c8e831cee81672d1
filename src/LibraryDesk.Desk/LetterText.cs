using LibraryDesk.Desk.Words;

namespace LibraryDesk.Desk;

/// <summary>What the desk says where no page says it: in letters, notices and the calendar, of grounds, and for names that are not there. Spoken in the language of who reads it, not of who causes it.</summary>
internal static class LetterText
{
    public static WordBook Say { get; } = new(typeof(LetterText));
}
