using System.Globalization;
using System.Text.Json;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Odds;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LibraryDesk.Web.Features.Identify;

/// <summary>Identification over HTTP, open to anybody, limited by rate. It reads crop guides and nothing else.</summary>
public static class IdentifyEndpoint
{
    public const string RatePolicy = "identify";
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { MaxDepth = 16 };

    private const int MostAnswers = 500;
    private const long MostBytes = 256 * 1024;

    public static void MapIdentify(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/api/v1/identify", IdentifyAsync)
            .WithName("Identify")
            .WithTags("Identification")
            .WithSummary("Ranks what a plant can be from trait answers.")
            .WithDescription("Takes trait answers in a crop guide's ids and gives candidates with probabilities, forms, the best next looks, typicality and the guide version, in the shape of `desk identify`. Several rows of one trait, person and look mean \"either of these\". Nothing is kept.")
            // Any type is let in, so that a wrong one is answered here in words.
            .Accepts<IdentifyRequest>("application/json", "*/*")
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status429TooManyRequests)
            .WithMetadata(new RequestSizeLimitAttribute(MostBytes))
            .RequireRateLimiting(RatePolicy)
            .DisableAntiforgery();

    private static async Task<Results<Ok<IdentifyResponse>, ValidationProblem, ProblemHttpResult>> IdentifyAsync(
        HttpContext http, GuideShelf shelf, CancellationToken stop)
    {
        if (await ReadAsync(http, stop) is not { } read) return Unreadable(StatusCodes.Status400BadRequest, "The body is not JSON in UTF-8.");
        if (read.Fault is { } unread) return unread;
        var request = read.Request;
        if (string.IsNullOrEmpty(request.Guide)) return Fault("guide", "Name the crop guide, for example \"capsicum\".");
        if (await shelf.CurrentAsWrittenAsync(request.Guide, stop) is not { } guide)
            return TypedResults.Problem($"There is no guide \"{request.Guide}\". The guides are listed under /guides.", statusCode: StatusCodes.Status404NotFound, extensions: Code("identify.no-guide"));
        if (request.Version is { } version && version != guide.Guide.Version)
        {
            if (!(await shelf.FindAsWrittenAsync(request.Guide, version, stop)).TryGet(out var older, out _))
                return TypedResults.Problem($"Guide \"{request.Guide}\" has no version {version} here, or no longer. The current one is {guide.Guide.Version}; leave version out to take it.", statusCode: StatusCodes.Status404NotFound, extensions: Code("identify.no-version"));
            guide = older;
        }

        if (request.Answers is null || request.Answers.Count > MostAnswers || request.Answers.Any(a => a?.Trait is null))
            return Fault("answers", string.Create(CultureInfo.InvariantCulture, $"Give answers as a list of up to {MostAnswers} rows, each with a trait; an empty list ranks by the guide's shares alone."));
        if (request.Prior is not (null or "guide" or "flat")) return Fault("prior", "prior is \"guide\" or \"flat\".");
        var prior = new Prior(IsFlat: request.Prior == "flat", Among: request.Among is { Count: > 0 } ? request.Among : null);
        if (prior.UnknownAmong(guide.Guide) is [var unknown, ..])
            return Fault("among", $"\"{unknown}\" is not a candidate of guide {guide.Guide.Id}. Its candidates are: {string.Join(", ", guide.Guide.Candidates.Select(c => c.Id))}.");

        if (request.Parts?.FirstOrDefault(id => guide.Guide.Parts.All(p => p.Id != id)) is { } part)
            return Fault("parts", $"\"{part}\" is not a part of guide {guide.Guide.Id}. Its parts are: {string.Join(", ", guide.Guide.Parts.Select(p => p.Id))}.");

        var faults = new Dictionary<int, string>();
        var answers = IdentifyAnswers.Read(guide, [.. request.Answers.OfType<IdentifyAnswer>()], faults);
        foreach (var fault in Evidence.Check(guide, answers).Faults) faults.TryAdd(fault.Row - 1, fault.Message);
        if (faults.Count > 0 || Evidence.Check(guide, answers).Evidence is not { } evidence)
        {
            return TypedResults.ValidationProblem(
                faults.OrderBy(f => f.Key).ToDictionary(f => string.Create(CultureInfo.InvariantCulture, $"answers[{f.Key}]"), f => new[] { f.Value }),
                detail: "Some answers cannot be taken; each is named below. Nothing was ranked.",
                extensions: Code("identify.answers"));
        }
        return TypedResults.Ok(IdentifyResponse.Of(request.Case ?? "", guide, evidence, prior, request.Parts?.ToHashSet()));
    }

    // Read by hand: a body that cannot be read gets a ProblemDetails that says where, not an empty 400.
    private static async Task<BodyRead?> ReadAsync(HttpContext http, CancellationToken stop)
    {
        if (!http.Request.HasJsonContentType())
            return new(null!, Unreadable(StatusCodes.Status415UnsupportedMediaType, "Send the request as application/json."));
        try
        {
            return await JsonSerializer.DeserializeAsync<IdentifyRequest>(http.Request.Body, Json, stop) is { } request ? new(request, null) : null;
        }
        catch (JsonException fault)
        {
            return new(null!, Unreadable(StatusCodes.Status400BadRequest, string.Create(CultureInfo.InvariantCulture, $"The body cannot be read at {fault.Path ?? "$"}, line {fault.LineNumber + 1}: it is not what this address takes. See /openapi/v1.json.")));
        }
        catch (BadHttpRequestException fault) when (fault.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return new(null!, Unreadable(StatusCodes.Status413PayloadTooLarge, "The body is larger than 256 kB. Send fewer answers, or use desk identify with a file."));
        }
    }

    private sealed record BodyRead(IdentifyRequest Request, ProblemHttpResult? Fault);

    private static ProblemHttpResult Unreadable(int status, string message) =>
        TypedResults.Problem(message, statusCode: status, extensions: Code("identify.body"));

    private static ValidationProblem Fault(string field, string message) =>
        TypedResults.ValidationProblem(new Dictionary<string, string[]> { [field] = [message] }, extensions: Code("identify." + field));

    private static Dictionary<string, object?> Code(string code) => new() { ["code"] = code };
}
