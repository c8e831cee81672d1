using LibraryDesk.Desk.People;
using static LibraryDesk.Web.Features.People.PeopleText;

namespace LibraryDesk.Web.Features.People;

/// <summary>The kinds of people in words.</summary>
internal static class RoleWords
{
    /// <summary>A role of <see cref="DeskRoles"/> in the reader's language.</summary>
    public static string Of(string role) => role switch
    {
        DeskRoles.Member => Say["member"],
        DeskRoles.Volunteer => Say["volunteer"],
        DeskRoles.Librarian => Say["librarian"],
        _ => role,
    };
}
