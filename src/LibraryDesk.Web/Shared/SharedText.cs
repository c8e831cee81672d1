using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Shared;

/// <summary>The words of the frames, marks and forms that all pages share.</summary>
internal static class SharedText
{
    public static WordBook Say { get; } = new(typeof(SharedText));
}
