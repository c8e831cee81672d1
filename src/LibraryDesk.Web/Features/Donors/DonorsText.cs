using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Donors;

/// <summary>The words of the list of donors.</summary>
internal static class DonorsText
{
    public static WordBook Say { get; } = new(typeof(DonorsText));
}
