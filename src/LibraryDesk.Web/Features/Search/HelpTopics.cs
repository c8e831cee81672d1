using static LibraryDesk.Web.Features.Search.SearchPageText;

namespace LibraryDesk.Web.Features.Search;

/// <summary>A place in the help and what it is about.</summary>
public sealed record HelpTopic(string Heading, string Address, string About);

/// <summary>The help's places, for the search.</summary>
public static class HelpTopics
{
    private static HelpTopic[] All =>
    [
        new(Say["You have a plant without a name"], "/help#plant", Say["file case photo question answer look odds opinion determination label lost mystery"]),
        new(Say["Why only the species?"], "/help#species", Say["variety species origin looks name fits"]),
        new(Say["You hold a packet"], "/help#packet", Say["packet scan code label QR lineage sow save seed"]),
        new(Say["You review cases"], "/help#review", Say["review opinion seal score contest cf aff decibans volunteer queue finish"]),
        new(Say["At the counter"], "/help#counter", Say["counter lend loan borrow hand over next person scanner undo take back"]),
        new(Say["Overdue loans"], "/help#overdue", Say["overdue late due loan reminder end"]),
        new(Say["Returns, and the box of returns"], "/help#returns", Say["return seed back box check in harvest"]),
        new(Say["Stocktake and correcting"], "/help#stocktake", Say["stocktake count stock inventory correct correction undo mistake"]),
        new(Say["Recalls"], "/help#recalls", Say["recall call back holders letters wrong name"]),
        new(Say["The ledger and its checkpoint"], "/help#ledger", Say["ledger checkpoint verify chain record hash entry"]),
        new(Say["People"], "/help#people", Say["people member volunteer librarian role invite invitation erase donor sign-in"]),
        new(Say["Keys"], "/help#keys", Say["keys keyboard shortcuts letters"]),
        new(Say["Words"], "/help#words", Say["look odds opinion determination accession lot packet lineage recall meaning glossary"]),
        new(Say["What we keep, and for how long"], "/help#kept", Say["privacy data keep erase account photo location tracking"]),
        new(Say["What it cannot know"], "/help#limits", Say["law protected eat safe rules"]),
        new(Say["What I am told"], "/account/notices", Say["notice reminder e-mail letter calendar"]),
    ];

    /// <summary>The places whose heading or words have what was asked; three letters or more.</summary>
    public static IReadOnlyList<HelpTopic> Find(string asked) =>
        asked.Length < 3 ? [] : [.. All.Where(t => t.Heading.Contains(asked, StringComparison.OrdinalIgnoreCase) || t.About.Contains(asked, StringComparison.OrdinalIgnoreCase))];
}
