using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Shelf;

/// <summary>The words of the seed shelf.</summary>
internal static class ShelfText
{
    public static WordBook Say { get; } = new(typeof(ShelfText));
}
