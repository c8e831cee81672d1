using System.Globalization;
using LibraryDesk.Desk.Calendar;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Web.Shared.Layout;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LibraryDesk.Web.Features.Notices;

/// <summary>Opening a notice, marking all as read, and the calendar feed.</summary>
internal static class NoticeEndpoints
{
    public static void MapNotices(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/notices/{id:long}", OpenAsync).ExcludeFromDescription();
        routes.MapPost("/notices/read-all", ReadAllAsync).WithMetadata(new RequireAntiforgeryTokenAttribute()).ExcludeFromDescription();
        routes.MapGet("/calendar/{file}", CalendarAsync).AllowAnonymous().ExcludeFromDescription();
    }

    // Marking as read is all that opening changes, and it is the reader's own mark; so a link does.
    private static async Task<RedirectHttpResult> OpenAsync(long id, HttpContext http, ReadNotices notices, CancellationToken stop) =>
        TypedResults.LocalRedirect((await notices.OpenAsync(CurrentActor.From(http), id, stop)).Match(row => LocalAddress.OrHome(row.Address), _ => "/notices"));

    private static async Task<RedirectHttpResult> ReadAllAsync([FromForm] string? seen, HttpContext http, ReadNotices notices, TimeProvider clock, CancellationToken stop)
    {
        var upTo = long.TryParse(seen, NumberStyles.None, CultureInfo.InvariantCulture, out var ticks) && ticks <= DateTimeOffset.MaxValue.UtcTicks
            ? new DateTimeOffset(ticks, TimeSpan.Zero)
            : clock.GetUtcNow();
        await notices.ReadAllAsync(CurrentActor.From(http), upTo, stop);
        return TypedResults.LocalRedirect("/notices");
    }

    private static async Task<Results<ContentHttpResult, NotFound>> CalendarAsync(
        string file, HttpContext http, ReadCalendar calendar, LibrarySettings settings, CancellationToken stop)
    {
        const string Ending = ".ics";
        if (!file.EndsWith(Ending, StringComparison.Ordinal)) return TypedResults.NotFound();
        if (!(await calendar.ReadAsync(file[..^Ending.Length], stop)).TryGet(out var view, out _)) return TypedResults.NotFound();
        var library = await settings.ReadAsync(stop);
        var site = library.PublicAddress.Length > 0 ? library.PublicAddress.TrimEnd('/') : $"{http.Request.Scheme}://{http.Request.Host}";
        http.Response.Headers.CacheControl = "private, max-age=900";
        // The address is the secret; it must not travel on in a Referer or stand in a search index.
        http.Response.Headers["Referrer-Policy"] = "no-referrer";
        http.Response.Headers["X-Robots-Tag"] = "noindex";
        return TypedResults.Text(CalendarFeed.Write(view, library.Name, site), "text/calendar; charset=utf-8");
    }
}
