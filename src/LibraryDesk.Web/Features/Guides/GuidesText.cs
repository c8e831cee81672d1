using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Guides;

/// <summary>The words of the guide browser.</summary>
internal static class GuidesText
{
    public static WordBook Say { get; } = new(typeof(GuidesText));
}
