using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using static LibraryDesk.Web.Features.Filing.FilingText;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>What a page says after something was posted elsewhere. The address carries a code; the words stand here, so no address can put words in the desk's mouth.</summary>
internal static class CaseNotices
{
    public const string AnswerTakenBack = "answer-taken-back";
    public const string ClueTakenBack = "clue-taken-back";
    public const string PhotoRemoved = "photo-removed";
    public const string PhotoRestored = "photo-restored";
    public const string Withdrawn = "withdrawn";
    public const string Filed = "filed";
    public const string Moved = "moved";

    private static readonly Refusal[] Refusals =
        [CaseRefusals.NotFound, CaseRefusals.Finished, CaseRefusals.ChangedMeanwhile, PeopleRefusals.NotYours, PeopleRefusals.SignInFirst];

    /// <summary>The words for something done; null for any other code.</summary>
    public static string? DoneWords(string? code) => code switch
    {
        AnswerTakenBack => Say["Answer taken back. It no longer moves the odds."],
        ClueTakenBack => Say["Taken back."],
        PhotoRemoved => Say["Photo taken off the case."],
        PhotoRestored => Say["The photo is back."],
        Withdrawn => Say["Case withdrawn. Nobody is asked to look at it any more."],
        Moved => Say["The case is read by the guide version in use now."],
        Filed => Say["Filed. It is on the desk now."],
        _ => null,
    };

    /// <summary>The words for something refused; null for any other code.</summary>
    public static string? RefusedWords(string? code) => Refusals.FirstOrDefault(r => r.Code == code) is { } no ? RefusalText.Say[no] : null;
}
