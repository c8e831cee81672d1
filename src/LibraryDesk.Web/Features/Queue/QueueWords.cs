using System.Globalization;
using LibraryDesk.Desk.Cases.Review;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>The review desk's words for what it shows.</summary>
internal static class QueueWords
{
    public static string Days(int days) => days switch
    {
        0 => "filed today",
        1 => "waiting 1 day",
        _ => string.Create(CultureInfo.InvariantCulture, $"waiting {days} days"),
    };

    public static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    public static string Date(DateTimeOffset at) => at.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Date(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Why the reader is asked; nothing in it comes from the odds or from what anybody said.</summary>
    public static string Why(QueueLine line) => line.Mine switch
    {
        MyPart.InReview => "Finish your review",
        MyPart.Finished => "Your opinion is in",
        _ => line.OpinionWanted == 0 ? "Being reviewed by others" : ReviewWords.Opinion(line.OpinionWanted),
    };

    /// <summary>A second line on what there is to go by.</summary>
    public static string? More(QueueLine line) =>
        line.LooksAsked > 0 ? $"{Count(line.LooksAsked, "look", "looks")} asked of the member"
        : line.IsSeasonClosing ? "The season closes: flowers and leaves go soon"
        : line.Photos == 0 ? "No photos, answers only"
        : line.Parts is ["leaves"] ? "Leaves only so far"
        : null;

    public static string Sureness(string sureness) => sureness switch
    {
        "fairly" => "fairly clear",
        "faint" => "faint",
        _ => "quite clear",
    };

    public static string By(Scorer scorer) => scorer switch
    {
        Scorer.Me => "You",
        Scorer.AnotherVolunteer => "Another volunteer",
        _ => "The member",
    };
}
