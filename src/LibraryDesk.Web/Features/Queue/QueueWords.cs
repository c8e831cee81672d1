using LibraryDesk.Desk.Cases.Review;
using static LibraryDesk.Web.Features.Queue.QueueText;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>The review desk's words for what it shows.</summary>
internal static class QueueWords
{
    public static string PartsNotSaid => Say["Parts not said"];

    public static string Days(int days) => days switch
    {
        0 => Say["filed today"],
        1 => Say["waiting 1 day"],
        _ => Say[$"waiting {days} days"],
    };

    /// <summary>Why the reader is asked; nothing in it comes from the odds or from what anybody said.</summary>
    public static string Why(QueueLine line) => line.Mine switch
    {
        MyPart.InReview => Say["Finish your review"],
        MyPart.Finished => Say["Your opinion is in"],
        _ => line.OpinionWanted == 0 ? Say["Being reviewed by others"] : Opinion(line.OpinionWanted),
    };

    /// <summary>A second line on what there is to go by.</summary>
    public static string? More(QueueLine line) =>
        line.LooksAsked > 0 ? Say.Count(line.LooksAsked, $"{line.LooksAsked} look asked of the member", $"{line.LooksAsked} looks asked of the member")
        : line.IsSeasonClosing ? Say["The season closes: flowers and leaves go soon"]
        : line.Photos == 0 ? Say["No photos, answers only"]
        : line.Parts is ["leaves"] ? Say["Leaves only so far"]
        : null;

    /// <summary>That an opinion is wanted, and which.</summary>
    public static string Wanted(int number) => number switch
    {
        1 => Say["First opinion wanted."],
        2 => Say["Second opinion wanted."],
        3 => Say["Third opinion wanted."],
        4 => Say["Fourth opinion wanted."],
        _ => Say["One more opinion wanted."],
    };

    public static string Sureness(string sureness) => sureness switch
    {
        "fairly" => Say["fairly clear"],
        "faint" => Say["faint"],
        _ => Say["quite clear"],
    };

    public static string By(Scorer scorer) => scorer switch
    {
        Scorer.Me => Say["You"],
        Scorer.AnotherVolunteer => Say["Another volunteer"],
        _ => Say["The member"],
    };

    /// <summary>The words with a small letter first, for use after others.</summary>
    public static string Lower(string words) => char.ToLowerInvariant(words[0]) + words[1..];

    private static string Opinion(int number) => number switch
    {
        1 => Say["First opinion"],
        2 => Say["Second opinion"],
        3 => Say["Third opinion"],
        4 => Say["Fourth opinion"],
        _ => Say["One more opinion"],
    };
}
