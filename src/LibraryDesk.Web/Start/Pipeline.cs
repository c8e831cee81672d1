using Microsoft.AspNetCore.Diagnostics;
using LibraryDesk.Web.Features.Account;
using LibraryDesk.Web.Features.Queue;
using LibraryDesk.Web.Features.Filing;
using LibraryDesk.Web.Features.Identify;
using LibraryDesk.Web.Features.Labels;
using LibraryDesk.Web.Features.Notices;
using LibraryDesk.Web.Shared.Language;
using LibraryDesk.Web.Features.Varieties;
using LibraryDesk.Web.Shared.Layout;

namespace LibraryDesk.Web.Start;

/// <summary>What every request passes through, in order.</summary>
internal static class Pipeline
{
    // 'self' alone: no inline script or style, so a forgotten encoding cannot become code. Frames are refused.
    private const string ContentPolicy =
        "default-src 'self'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; connect-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public static void UseLibraryDesk(this WebApplication app)
    {
        if (!app.Environment.IsDevelopment())
        {
            app.UseExceptionHandler("/error", createScopeForErrors: true);
            app.UseHsts();
        }
        app.Use(static (http, next) =>
        {
            var headers = http.Response.Headers;
            headers.ContentSecurityPolicy = ContentPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=()";
            return next(http);
        });
        app.UseResponseCompression();
        // An empty error is told in the form the caller reads: a page to people, ProblemDetails to programs.
        app.UseStatusCodePagesWithReExecute("/told/{0}", createScopeForStatusCodePages: true);
        app.UseWhen(static http => http.Request.Path.StartsWithSegments("/api"), static api => api.UseStatusCodePages());
        app.Use(static async (http, next) =>
        {
            try
            {
                await next(http);
            }
            catch (InvalidOperationException fault) when (IsMangledAddress(fault) && !http.Response.HasStarted)
            {
                http.Response.StatusCode = StatusCodes.Status404NotFound;
                http.Response.ContentType = null;
                return;
            }
            // A form that its page no longer carries, or whose token is another's, is refused with a type of content and no content. That would keep the
            // page that says so from it.
            if (http.Response is { HasStarted: false, StatusCode: StatusCodes.Status400BadRequest, ContentLength: null or 0 }) http.Response.ContentType = null;
        });
        app.Use(static (http, next) =>
        {
            // The page that tells of an error is read, whatever was tried.
            if (http.Features.Get<IStatusCodeReExecuteFeature>() is not null) http.Request.Method = HttpMethods.Get;
            return next(http);
        });
        app.UseAuthentication();
        app.UseRequestLocalization();
        app.UseAuthorization();
        app.UseRateLimiter();
        app.UseAntiforgery();
    }

    // A number in the address that is none: the framework has no type of its own for it, only these words (a browser test holds them).
    private static bool IsMangledAddress(InvalidOperationException fault) =>
        fault.Source == "Microsoft.AspNetCore.Components" && fault.Message.StartsWith("Cannot parse the value", StringComparison.Ordinal);

    public static void MapLibraryEndpoints(this WebApplication app)
    {
        app.MapHealthChecks("/health/ready");
        app.MapGet("/health/live", static () => Results.Text("ok"));
        app.MapViewMode();
        app.MapLanguage();
        app.MapAccount();
        app.MapQueue();
        app.MapFiling();
        app.MapVarieties();
        app.MapIdentify();
        app.MapLabels();
        app.MapNotices();
        app.MapOpenApi();
    }
}
