using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>The words of lots and of what is done with them.</summary>
internal static class LotsText
{
    public static WordBook Say { get; } = new(typeof(LotsText));
}
