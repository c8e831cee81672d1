using System.Security.Claims;
using LibraryDesk.Desk.People;
using Microsoft.AspNetCore.Components.Routing;

namespace LibraryDesk.Web.Shared.Layout;

/// <summary>The main menu by role. A courtesy only: every page asks for the permission again.</summary>
public static class SiteLinks
{
    private static readonly SiteLink MyDesk = new("/", "My desk", NavLinkMatch.All);
    private static readonly SiteLink MyCases = new("/cases", "My cases");
    private static readonly SiteLink Queue = new("/queue", "Queue");
    private static readonly SiteLink Shelf = new("/shelf", "Seed shelf");
    private static readonly SiteLink DeskRecord = new("/record", "Desk’s record");

    private static readonly SiteLink[] SignedOut =
        [new("/help", "How it works"), DeskRecord, new("/account/sign-in", "Sign in"), new("/account/sign-up", "Sign up")];

    private static readonly SiteLink[] Member = [MyDesk, MyCases, new("/loans", "My loans"), Shelf, DeskRecord];

    private static readonly SiteLink[] Volunteering = [MyDesk, MyCases, new("/loans", "My loans"), Shelf, Queue, DeskRecord];

    private static readonly SiteLink[] Staff =
    [
        MyDesk, MyCases, Queue, Shelf, new("/lots", "Lots"), new("/loans", "Loans"), new("/recalls", "Recalls"),
        new("/labels", "Labels"), DeskRecord, new("/settings", "Settings"),
    ];

    public static bool IsLibrarian(ClaimsPrincipal? user) => user?.IsInRole(DeskRoles.Librarian) == true;

    public static IReadOnlyList<SiteLink> For(ClaimsPrincipal? user) => user switch
    {
        null or { Identity: not { IsAuthenticated: true } } => SignedOut,
        _ when user.IsInRole(DeskRoles.Librarian) => Staff,
        _ when user.IsInRole(DeskRoles.Volunteer) => Volunteering,
        _ => Member,
    };
}
