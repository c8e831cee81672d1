using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LibraryDesk.Web.Shared.Layout;

/// <summary>Keeps the chosen view on the device and leads back to the page it was chosen on.</summary>
public static class ViewModeEndpoint
{
    public static void MapViewMode(this IEndpointRouteBuilder routes) =>
        // Without a token on purpose: a forged post could change colours and nothing else, and a token would put a
        // cookie on every reader of a public page.
        routes.MapPost("/view-mode", Choose).DisableAntiforgery().AllowAnonymous();

    private static RedirectHttpResult Choose(HttpContext http, [FromForm] string? view, [FromForm] string? returnUrl)
    {
        if (view is not null && ViewMode.Choices.Contains(view))
        {
            http.Response.Cookies.Append(ViewMode.CookieName, view, new CookieOptions
            {
                HttpOnly = true,
                IsEssential = true,
                MaxAge = TimeSpan.FromDays(365),
                SameSite = SameSiteMode.Lax,
                Secure = http.Request.IsHttps,
            });
        }
        else
        {
            http.Response.Cookies.Delete(ViewMode.CookieName);
        }

        return TypedResults.LocalRedirect(LocalAddress.OrHome(returnUrl));
    }
}
