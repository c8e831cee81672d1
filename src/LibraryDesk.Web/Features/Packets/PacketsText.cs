using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Packets;

/// <summary>The words of the page of a packet.</summary>
internal static class PacketsText
{
    public static WordBook Say { get; } = new(typeof(PacketsText));
}
