using System.Security.Claims;
using LibraryDesk.Desk.People;
using Microsoft.AspNetCore.Components.Routing;
using static LibraryDesk.Web.Shared.SharedText;

namespace LibraryDesk.Web.Shared.Layout;

/// <summary>The main menu by role. A courtesy only: every page asks for the permission again.</summary>
/// <remarks>Made anew each time, in the language of who asks.</remarks>
public static class SiteLinks
{
    private static SiteLink MyDesk => new("/", Say["My desk"], NavLinkMatch.All);
    private static SiteLink MyCases => new("/cases", Say["My cases"]);
    private static SiteLink Queue => new("/queue", Say["Queue"]);
    private static SiteLink Shelf => new("/shelf", Say["Seed shelf"]);
    private static SiteLink DeskRecord => new("/record", Say["Desk’s record"]);

    private static SiteLink[] SignedOut =>
        [new("/help", Say["How it works"]), DeskRecord, new("/account/sign-in", Say["Sign in"]), new("/account/sign-up", Say["Sign up"])];

    private static SiteLink[] Member => [MyDesk, MyCases, new("/loans", Say["My loans"]), Shelf, DeskRecord];

    private static SiteLink[] Volunteering => [MyDesk, MyCases, new("/loans", Say["My loans"]), Shelf, Queue, DeskRecord];

    private static SiteLink[] Staff =>
    [
        MyDesk, MyCases, Queue, Shelf, new("/lots", Say["Lots"]), new("/loans", Say["Loans"]), new("/recalls", Say["Recalls"]),
        new("/labels", Say["Labels"]), DeskRecord, new("/settings", Say["Settings"]),
    ];

    public static bool IsLibrarian(ClaimsPrincipal? user) => user?.IsInRole(DeskRoles.Librarian) == true;

    /// <summary>True for those whose links need a line of their own.</summary>
    public static bool RunsTheDesk(ClaimsPrincipal? user) => IsLibrarian(user) || user?.IsInRole(DeskRoles.Volunteer) == true;

    public static bool IsVolunteer(ClaimsPrincipal? user) => user?.IsInRole(DeskRoles.Volunteer) == true;

    public static IReadOnlyList<SiteLink> For(ClaimsPrincipal? user) => user switch
    {
        null or { Identity: not { IsAuthenticated: true } } => SignedOut,
        _ when user.IsInRole(DeskRoles.Librarian) => Staff,
        _ when user.IsInRole(DeskRoles.Volunteer) => Volunteering,
        _ => Member,
    };
}
