using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Search;

/// <summary>The words of the search.</summary>
internal static class SearchPageText
{
    public static WordBook Say { get; } = new(typeof(SearchPageText));
}
