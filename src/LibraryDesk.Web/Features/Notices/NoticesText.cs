using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Notices;

/// <summary>The words of what people are told, and of their calendar.</summary>
internal static class NoticesText
{
    public static WordBook Say { get; } = new(typeof(NoticesText));
}
