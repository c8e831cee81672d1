using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.SeedSearch;

/// <summary>The words of the search of the seed.</summary>
internal static class SeedSearchText
{
    public static WordBook Say { get; } = new(typeof(SeedSearchText));
}
