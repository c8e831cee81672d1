using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Recalls;

/// <summary>The words of calling seed back.</summary>
internal static class RecallsText
{
    public static WordBook Say { get; } = new(typeof(RecallsText));
}
