using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using LibraryDesk.Photos;
using Microsoft.AspNetCore.Http.HttpResults;

namespace LibraryDesk.Web.Start;

/// <summary>A refusal as ProblemDetails (RFC 9457), with its stable code. The pages' scripts show its words, so they are in the reader's language.</summary>
internal static class RefusalProblems
{
    public static ProblemHttpResult ToProblem(this Refusal refusal) => TypedResults.Problem(
        detail: RefusalText.Say[refusal],
        statusCode: StatusOf(refusal.Code),
        extensions: new Dictionary<string, object?> { ["code"] = refusal.Code });

    private static int StatusOf(string code) => code switch
    {
        PeopleRefusals.SignInCode => StatusCodes.Status401Unauthorized,
        PeopleRefusals.MayNotCode or CaseRefusals.OwnCaseCode => StatusCodes.Status403Forbidden,
        CaseRefusals.NotFoundCode or "photo.gone" => StatusCodes.Status404NotFound,
        CaseRefusals.FinishedCode or CaseRefusals.ChangedMeanwhileCode or CaseRefusals.SealFirstCode => StatusCodes.Status409Conflict,
        PhotoRefusals.TooManyBytesCode => StatusCodes.Status413PayloadTooLarge,
        PhotoRefusals.NotAPictureCode or PhotoRefusals.OtherFormatCode => StatusCodes.Status415UnsupportedMediaType,
        _ => StatusCodes.Status422UnprocessableEntity,
    };
}
