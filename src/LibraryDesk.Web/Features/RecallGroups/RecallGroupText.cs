using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.RecallGroups;

/// <summary>The words of recalls that were started in one go.</summary>
internal static class RecallGroupText
{
    public static WordBook Say { get; } = new(typeof(RecallGroupText));
}
