using LibraryDesk.Desk.Seeds.Keeping;
using static LibraryDesk.Web.Features.Due.DueText;

namespace LibraryDesk.Web.Features.Due;

/// <summary>Words for what is due.</summary>
internal static class DueWords
{
    public static string What(DueKind kind) => kind switch
    {
        DueKind.Test => Say["Germination test"],
        DueKind.Regrow => Say["Grow anew"],
        _ => Say["Count"],
    };

    public static string Why(DueLine line) => line switch
    {
        { Kind: DueKind.Recount } => Say["It was not counted for long."],
        { Kind: DueKind.Test, Latest: null } => Say["It was never tested."],
        { Kind: DueKind.Test, RestsOnForecast: true } => Say["A third of the time until it is forecast to fall below the threshold is over then."],
        { Kind: DueKind.Test } => Say["Its last test is too old to go by then."],
        { RestsOnForecast: true, Threshold: { } threshold } => Say[$"Forecast to fall below {100 * threshold:0} in 100."],
        { Latest: { } latest, Threshold: { } threshold } when latest.Share < threshold => Say[$"{100 * latest.Share:0} in 100 came up, below the threshold of {100 * threshold:0}."],
        _ => Say["Too few seeds are left."],
    };

    /// <summary>The page on which it is done.</summary>
    public static string Href(DueLine line) => line.Kind switch
    {
        DueKind.Test => $"/lots/{line.Code}/test",
        DueKind.Recount => $"/lots/{line.Code}/count",
        _ => $"/lots/{line.Code}",
    };
}
