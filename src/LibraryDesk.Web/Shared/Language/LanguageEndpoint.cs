using LibraryDesk.Data.People;
using LibraryDesk.Desk.Words;
using LibraryDesk.Web.Shared.Layout;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Localization;
using Microsoft.AspNetCore.Mvc;

namespace LibraryDesk.Web.Shared.Language;

/// <summary>Keeps the chosen language: on the device for everybody, and with the account of who is signed in, for their letters.</summary>
public static class LanguageEndpoint
{
    public static void MapLanguage(this IEndpointRouteBuilder routes) =>
        // Without a token, as the view: a forged post could change the language and nothing else.
        routes.MapPost("/language", ChooseAsync).DisableAntiforgery().AllowAnonymous();

    private static async Task<RedirectHttpResult> ChooseAsync(
        HttpContext http, SignInManager<DeskUser> signIn, [FromForm] string? language, [FromForm] string? returnUrl)
    {
        if (language is not null && Languages.All.Contains(language))
        {
            http.Response.Cookies.Append(
                CookieRequestCultureProvider.DefaultCookieName,
                CookieRequestCultureProvider.MakeCookieValue(new RequestCulture(language)),
                new CookieOptions { HttpOnly = true, IsEssential = true, MaxAge = TimeSpan.FromDays(365), SameSite = SameSiteMode.Lax, Secure = http.Request.IsHttps });
            if (await signIn.UserManager.GetUserAsync(http.User) is { } user)
            {
                var had = (await signIn.UserManager.GetClaimsAsync(user)).Where(claim => claim.Type == Languages.ClaimType).ToList();
                if (had.Count > 0) await signIn.UserManager.RemoveClaimsAsync(user, had);
                await signIn.UserManager.AddClaimAsync(user, new(Languages.ClaimType, language));
                await signIn.RefreshSignInAsync(user);
            }
        }
        return TypedResults.LocalRedirect(LocalAddress.OrHome(returnUrl));
    }
}
