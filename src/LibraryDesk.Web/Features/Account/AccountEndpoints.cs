using LibraryDesk.Data.People;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace LibraryDesk.Web.Features.Account;

/// <summary>Leaving the desk.</summary>
internal static class AccountEndpoints
{
    public static void MapAccount(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/account/sign-out", SignOutAsync).WithMetadata(new RequireAntiforgeryTokenAttribute()).ExcludeFromDescription();

    private static async Task<RedirectHttpResult> SignOutAsync(SignInManager<DeskUser> signIn)
    {
        await signIn.SignOutAsync();
        return TypedResults.LocalRedirect("/");
    }
}
