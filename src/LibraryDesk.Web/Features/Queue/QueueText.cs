using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>The words of the review desk.</summary>
internal static class QueueText
{
    public static WordBook Say { get; } = new(typeof(QueueText));
}
