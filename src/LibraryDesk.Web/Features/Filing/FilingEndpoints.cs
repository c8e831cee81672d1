using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Lineage;
using LibraryDesk.Photos;
using LibraryDesk.Web.Shared.Layout;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>A photo that is stored.</summary>
public sealed record KeptPhoto(Guid Id, string Small, string Part);

/// <summary>What the pages of a case post besides their own forms: photos, and taking things back.</summary>
internal static class FilingEndpoints
{
    // The form's own parts beside the photo.
    private const long FormOverhead = 64 * 1024;

    public static void MapFiling(this IEndpointRouteBuilder routes)
    {
        var limit = new PhotoLimits().MaxBytes + FormOverhead;
        routes.MapGet("/c/{key}", OpenLinkAsync).ExcludeFromDescription();
        routes.MapGet("/photos/{photoId:guid}/{size}", PhotoAsync).ExcludeFromDescription();
        routes.MapGet("/cases/{id:long}/changes", ChangesAsync).ExcludeFromDescription();
        var posts = routes.MapGroup("/cases/{id:long}").WithMetadata(new RequireAntiforgeryTokenAttribute()).ExcludeFromDescription();
        posts.MapPost("/photos/add", AddPhotoAsync)
            .WithFormOptions(multipartBodyLengthLimit: limit)
            .WithMetadata(new RequestSizeLimitAttribute(limit));
        posts.MapPost("/photos/{photoId:guid}/remove", RemovePhotoAsync);
        posts.MapPost("/photos/{photoId:guid}/restore", RestorePhotoAsync);
        posts.MapPost("/answers/{answerId:long}/take-back", TakeBackAnswerAsync);
        posts.MapPost("/clues/{clueId:long}/take-back", TakeBackClueAsync);
        posts.MapPost("/withdraw", WithdrawAsync);
    }

    private static async Task<Results<RedirectHttpResult, NotFound>> OpenLinkAsync(string key, HttpContext http, ListCases cases, CancellationToken stop)
    {
        if (!GuestLinks.IsKey(key)) return TypedResults.NotFound();
        var own = await cases.OwnAsync(Desk.People.Actor.Guest(key), stop);
        if (own.Count == 0) return TypedResults.NotFound();
        GuestLinks.Remember(http, key);
        return TypedResults.LocalRedirect(own.Count == 1 ? $"/cases/{own[0].Case.Id}" : "/cases");
    }

    private static async Task<Results<FileStreamHttpResult, ProblemHttpResult>> PhotoAsync(
        Guid photoId, string size, HttpContext http, OpenPhoto photos, CancellationToken stop)
    {
        if (!Enum.TryParse<PhotoSize>(size, ignoreCase: true, out var wanted) || !Enum.IsDefined(wanted)) return OpenPhoto.Gone.ToProblem();
        if (!(await photos.OpenAsync(CurrentActor.From(http), photoId, wanted, stop)).TryGet(out var bytes, out var no)) return no.ToProblem();
        // The bytes of one id never change, but the right to see them may: only this browser keeps them, and not for long.
        http.Response.Headers.CacheControl = "private, max-age=3600";
        return TypedResults.Stream(bytes, "image/jpeg");
    }

    private static async Task<Results<ServerSentEventsResult<string>, ProblemHttpResult>> ChangesAsync(
        long id, long? since, HttpContext http, FollowCase follow, CancellationToken stop)
    {
        if (!(await follow.FollowAsync(CurrentActor.From(http), id, since ?? 0, stop)).TryGet(out var changes, out var no)) return no.ToProblem();
        return TypedResults.ServerSentEvents(changes.Newest, "changed");
    }

    private static async Task<Results<Created<KeptPhoto>, ProblemHttpResult>> AddPhotoAsync(
        long id, IFormFile? photo, [FromForm] string? part, [FromForm] long? look, HttpContext http, AddPhoto act, CancellationToken stop)
    {
        if (photo is null) return new Refusal("photo.empty", "No photo came with it. Choose one and send it again.").ToProblem();
        await using var upload = photo.OpenReadStream();
        var outcome = await act.AddAsync(CurrentActor.From(http), id, look, new SentPhoto(part ?? "", null), upload, stop);
        if (!outcome.TryGet(out var kept, out var no)) return no.ToProblem();
        var address = PhotoLinks.Small(kept.Id);
        return TypedResults.Created(address, new KeptPhoto(kept.Id, address, kept.Part));
    }

    private static async Task<RedirectHttpResult> RemovePhotoAsync(
        long id, Guid photoId, [FromForm] string? returnUrl, HttpContext http, RemovePhoto act, CancellationToken stop) =>
        Back(await act.RemoveAsync(CurrentActor.From(http), id, photoId, stop), id, returnUrl, $"photo-removed&photo={photoId}");

    private static async Task<RedirectHttpResult> RestorePhotoAsync(
        long id, Guid photoId, [FromForm] string? returnUrl, HttpContext http, RemovePhoto act, CancellationToken stop) =>
        Back(await act.RestoreAsync(CurrentActor.From(http), id, photoId, stop), id, returnUrl, CaseNotices.PhotoRestored);

    private static async Task<RedirectHttpResult> TakeBackAnswerAsync(
        long id, long answerId, [FromForm] string? returnUrl, HttpContext http, TakeBackAnswer act, CancellationToken stop) =>
        Back(await act.TakeBackAsync(CurrentActor.From(http), id, answerId, stop), id, returnUrl, CaseNotices.AnswerTakenBack);

    private static async Task<RedirectHttpResult> TakeBackClueAsync(
        long id, long clueId, [FromForm] string? returnUrl, HttpContext http, AddOriginClue act, CancellationToken stop) =>
        Back(await act.TakeBackAsync(CurrentActor.From(http), id, clueId, stop), id, returnUrl, CaseNotices.ClueTakenBack);

    private static async Task<RedirectHttpResult> WithdrawAsync(long id, [FromForm] string? returnUrl, HttpContext http, WithdrawCase act, CancellationToken stop) =>
        Back(await act.WithdrawAsync(CurrentActor.From(http), id, stop), id, returnUrl, CaseNotices.Withdrawn);

    /// <summary>Back to the page it came from, which says what happened. Only a code travels in the address, never words.</summary>
    private static RedirectHttpResult Back<T>(Outcome<T> outcome, long id, string? returnUrl, string said)
        where T : notnull
    {
        var place = LocalAddress.OrHome(string.IsNullOrEmpty(returnUrl) ? $"/cases/{id}" : returnUrl).Split('?', '#')[0];
        return TypedResults.LocalRedirect($"{place}?said={outcome.Refusal?.Code ?? said}");
    }
}
