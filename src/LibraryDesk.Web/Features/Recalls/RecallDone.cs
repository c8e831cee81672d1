using static LibraryDesk.Web.Features.Recalls.RecallsText;

namespace LibraryDesk.Web.Features.Recalls;

/// <summary>The word after a deed on a recall, by the "done" of its address.</summary>
internal static class RecallDone
{
    /// <param name="done">The deed.</param>
    /// <param name="people">People it reached.</param>
    /// <param name="missed">Packets whose holder it did not reach.</param>
    /// <param name="packet">The packet it was about; null for none.</param>
    /// <param name="held">Codes that stay held by something else; null for none.</param>
    public static string? Words(string? done, int people, int missed, string? packet = null, string? held = null) => done switch
    {
        "started" => Say["The recall is open: nothing of it can be lent. Now tell the holders."],
        "written" when missed > 0 => $"{Told(people)} {Say.Count(missed, $"The holder of {missed} packet can’t be reached by the desk: tell them another way, then note it in the list.", $"The holders of {missed} packets can’t be reached by the desk: tell them another way, then note it in the list.")}",
        "written" => Told(people),
        "reminded" => Say.Count(people, $"{people} person is reminded.", $"{people} people are reminded."),
        "told" when packet is not null => Say[$"It is noted that the holder of {packet} was told."],
        "told" => Say["It is noted that they were told."],
        "answered" when packet is not null => Say[$"The answer for {packet} is noted."],
        "unanswered" when packet is not null => Say[$"It is noted that there is no answer for {packet} yet."],
        "answered" => Say["The answer is noted."],
        "unanswered" => Say["It is noted that there is no answer yet."],
        "closed" when !string.IsNullOrEmpty(held) => $"{Closed(people)} {Say[$"Something else still holds {held}."]}",
        "closed" => Closed(people),
        "reopened" => Say["The recall is open again: nothing of it can be lent. Packets that left meanwhile are on the list; tell the holders anew."],
        _ => null,
    };

    private static string Closed(int people) => people > 0 ? $"{Say["The recall is closed."]} {Say.Count(people, $"{people} person who had been told of it was told that too.", $"{people} people who had been told of it were told that too.")}" : Say["The recall is closed."];

    private static string Told(int people) => Say.Count(people, $"{people} person is told.", $"{people} people are told.");
}
