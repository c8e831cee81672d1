using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Desk.Words;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Http.HttpResults;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>The print itself: a document of its own, and the style sheet with its sizes.</summary>
internal static class LabelEndpoints
{
    public static void MapLabels(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/labels/sheet", SheetAsync).RequireAuthorization(DeskAccounts.VolunteersOnly).ExcludeFromDescription();
        routes.MapGet("/labels/sheet.css", Style).ExcludeFromDescription();
    }

    private static async Task<Results<RazorComponentResult<LabelSheet>, ProblemHttpResult>> SheetAsync(
        HttpContext http, ReadLabels read, LibrarySettings settings, CancellationToken stop)
    {
        var query = http.Request.Query;
        var codes = query["codes"].SelectMany(value => (value ?? "").Split([',', ' '], StringSplitOptions.RemoveEmptyEntries)).ToArray();
        if (!(await read.ByCodeAsync(CurrentActor.From(http.User), codes, stop)).TryGet(out var found, out var no))
            return TypedResults.Problem(RefusalText.Say[no], statusCode: StatusCodes.Status403Forbidden, extensions: new Dictionary<string, object?> { ["code"] = no.Code });
        return new RazorComponentResult<LabelSheet>(new Dictionary<string, object?>
        {
            [nameof(LabelSheet.Labels)] = found.Labels,
            [nameof(LabelSheet.Wish)] = WishOf(query),
            [nameof(LabelSheet.Settings)] = await settings.ReadAsync(stop),
            [nameof(LabelSheet.RequestAddress)] = $"{http.Request.Scheme}://{http.Request.Host}{http.Request.PathBase}",
        })
        {
            PreventStreamingRendering = true,
        };
    }

    private static ContentHttpResult Style(HttpContext http) => TypedResults.Text(SheetStyle.Of(WishOf(http.Request.Query)), "text/css");

    private static LabelWish WishOf(IQueryCollection query) => LabelWish.Read(
        query["format"], query["start"], query["right"], query["down"], query["stakes"], query["test"], query["treated"], query["below"]);
}
