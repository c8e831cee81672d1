using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>The words of filing a case: its steps, questions and photos.</summary>
internal static class FilingText
{
    public static WordBook Say { get; } = new(typeof(FilingText));
}
