using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.People;

/// <summary>The words of the page about the people of the library.</summary>
internal static class PeopleText
{
    public static WordBook Say { get; } = new(typeof(PeopleText));
}
