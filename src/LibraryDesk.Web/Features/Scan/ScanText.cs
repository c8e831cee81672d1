using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Scan;

/// <summary>The words of scanning labels.</summary>
internal static class ScanText
{
    public static WordBook Say { get; } = new(typeof(ScanText));
}
