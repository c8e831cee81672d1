using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Home;

/// <summary>The words of the front page.</summary>
internal static class HomeText
{
    public static WordBook Say { get; } = new(typeof(HomeText));
}
