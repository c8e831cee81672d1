using System.Security.Claims;
using LibraryDesk.Desk.People;
using Microsoft.AspNetCore.Components.Authorization;

namespace LibraryDesk.Web.Start;

/// <summary>Turns the signed-in person of a page or circuit into the actor that the desk's acts check.</summary>
public sealed class CurrentActor(AuthenticationStateProvider authentication)
{
    public async Task<Actor> GetAsync() => From((await authentication.GetAuthenticationStateAsync()).User);

    public static Actor From(ClaimsPrincipal person)
    {
        if (!Guid.TryParse(person.FindFirstValue(ClaimTypes.NameIdentifier), out var id)) return Actor.Visitor;
        var role = DeskRoles.All.LastOrDefault(person.IsInRole) ?? DeskRoles.Member;
        return new Actor(id, role);
    }
}
