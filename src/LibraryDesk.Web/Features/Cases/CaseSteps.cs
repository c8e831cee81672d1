using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Web.Shared.Marks;
using static LibraryDesk.Web.Features.Cases.CasesText;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>How far a case is, in the words of its page.</summary>
internal static class CaseSteps
{
    public static IReadOnlyList<string> Names => [Say["Filed"], Say["Open"], Say["Waiting for a look"], Say["Opinions"], Say["Determination"]];

    /// <summary>The step reached, from 0.</summary>
    public static int Now(CaseView view) => view.Case.State switch
    {
        CaseState.Draft => 0,
        CaseState.WaitingForLook => 2,
        CaseState.Determined or CaseState.Closed => 4,
        _ => view.Opinions > 0 ? 3 : 1,
    };

    public static bool IsFinished(CaseView view) => view.Case.State is CaseState.Determined || view.Determination is not null;

    public static ChipKind Chip(CaseState state) => state switch
    {
        CaseState.WaitingForLook => ChipKind.Waiting,
        CaseState.Determined => ChipKind.Determined,
        CaseState.Closed => ChipKind.Closed,
        _ => ChipKind.Open,
    };

    public static string Words(CaseState state, int opinions, int needed) => state switch
    {
        CaseState.Draft => Say["Not filed yet"],
        CaseState.WaitingForLook => Say["Waiting for a look"],
        CaseState.Determined => Say["Determined"],
        CaseState.Closed => Say["Closed"],
        _ => opinions == 0 ? Say["Open"] : Say[$"Opinions {Math.Min(opinions, needed)} of {needed}"],
    };
}
