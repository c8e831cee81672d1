using System.Globalization;
using LibraryDesk.Desk.Varieties;
using LibraryDesk.Lineage;
using LibraryDesk.Photos;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LibraryDesk.Web.Features.Varieties;

/// <summary>Reference photos: sent, served, taken off and put back.</summary>
internal static class VarietyEndpoints
{
    // The form's own parts beside the photo.
    private const long FormOverhead = 64 * 1024;

    public static void MapVarieties(this IEndpointRouteBuilder routes)
    {
        var limit = new PhotoLimits().MaxBytes + FormOverhead;
        routes.MapGet("/varieties/photos/{photoId:guid}/{size}", PhotoAsync).ExcludeFromDescription();
        var posts = routes.MapGroup("/varieties/{id:long}/photos").WithMetadata(new RequireAntiforgeryTokenAttribute()).ExcludeFromDescription();
        posts.MapPost("/add", AddAsync).WithFormOptions(multipartBodyLengthLimit: limit).WithMetadata(new RequestSizeLimitAttribute(limit));
        posts.MapPost("/{photoId:guid}/remove", RemoveAsync);
        posts.MapPost("/{photoId:guid}/restore", RestoreAsync);
    }

    private static async Task<Results<FileStreamHttpResult, ProblemHttpResult>> PhotoAsync(Guid photoId, string size, HttpContext http, VarietyPhotos photos, CancellationToken stop)
    {
        var wanted = Enum.TryParse<PhotoSize>(size, ignoreCase: true, out var read) && Enum.IsDefined(read) ? read : PhotoSize.Large;
        if (!(await photos.OpenAsync(photoId, wanted, stop)).TryGet(out var bytes, out var no)) return no.ToProblem();
        http.Response.Headers.CacheControl = "private, max-age=3600";
        return TypedResults.Stream(bytes, "image/jpeg");
    }

    private static async Task<RedirectHttpResult> AddAsync(long id, IFormFile? photo, [FromForm] string? caption, HttpContext http, VarietyPhotos photos, CancellationToken stop)
    {
        if (photo is null) return Back(id, "photo.empty");
        await using var upload = photo.OpenReadStream();
        return Back(id, await photos.AddAsync(CurrentActor.From(http), id, caption, upload, stop), "photo-added");
    }

    private static async Task<RedirectHttpResult> RemoveAsync(long id, Guid photoId, HttpContext http, VarietyPhotos photos, CancellationToken stop) =>
        Back(id, await photos.SetRemovedAsync(CurrentActor.From(http), id, photoId, isRemoved: true, stop), $"photo-removed&removed={photoId}");

    private static async Task<RedirectHttpResult> RestoreAsync(long id, Guid photoId, HttpContext http, VarietyPhotos photos, CancellationToken stop) =>
        Back(id, await photos.SetRemovedAsync(CurrentActor.From(http), id, photoId, isRemoved: false, stop), "photo-restored");

    private static RedirectHttpResult Back<T>(long id, Outcome<T> outcome, string done)
        where T : notnull => Back(id, outcome.Refusal?.Code ?? done);

    private static RedirectHttpResult Back(long id, string code) => TypedResults.LocalRedirect(string.Create(CultureInfo.InvariantCulture, $"/varieties/{id}?done={code}"));
}
