using System.Security.Claims;
using LibraryDesk.Desk.People;
using LibraryDesk.Web.Features.Filing;
using Microsoft.AspNetCore.Components.Authorization;

namespace LibraryDesk.Web.Start;

/// <summary>Turns the signed-in person of a page or circuit, and the guest links of this device, into the actor that the desk's acts check.</summary>
public sealed class CurrentActor(AuthenticationStateProvider authentication, IHttpContextAccessor? http = null)
{
    public async Task<Actor> GetAsync() =>
        From((await authentication.GetAuthenticationStateAsync()).User) with { GuestKey = GuestLinks.KeysOf(http?.HttpContext) };

    public static Actor From(ClaimsPrincipal person)
    {
        if (!Guid.TryParse(person.FindFirstValue(ClaimTypes.NameIdentifier), out var id)) return Actor.Visitor;
        var role = DeskRoles.All.LastOrDefault(person.IsInRole) ?? DeskRoles.Member;
        return new Actor(id, role);
    }

    /// <summary>The same for an endpoint.</summary>
    public static Actor From(HttpContext http) => From(http.User) with { GuestKey = GuestLinks.KeysOf(http) };
}
