using System.Security.Claims;
using LibraryDesk.Data.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace LibraryDesk.Web.Features.Account;

/// <summary>Lets pages greet a person by name instead of by address.</summary>
internal sealed class DeskClaims(
    UserManager<DeskUser> users, RoleManager<IdentityRole<Guid>> roles, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<DeskUser, IdentityRole<Guid>>(users, roles, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(DeskUser user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        if (identity.FindFirst(identity.NameClaimType) is { } address) identity.RemoveClaim(address);
        identity.AddClaim(new Claim(identity.NameClaimType, user.DisplayName));
        return identity;
    }
}
