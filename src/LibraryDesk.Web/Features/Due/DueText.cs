using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Due;

/// <summary>The words of what is due.</summary>
internal static class DueText
{
    public static WordBook Say { get; } = new(typeof(DueText));
}
