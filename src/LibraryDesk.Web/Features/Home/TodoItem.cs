using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Web.Features.Cases;
using LibraryDesk.Web.Features.Filing;
using static LibraryDesk.Web.Features.Home.HomeText;

namespace LibraryDesk.Web.Features.Home;

/// <summary>One thing that would help: a deed, why, and where it is done.</summary>
internal sealed record TodoItem(string Drawing, string Heading, string Why, string Address, string Deed)
{
    /// <summary>The most that are shown at once: more would help nobody choose.</summary>
    public const int Most = 3;

    private const int DaysBeforeDue = 45;
    private const int DaysAfterDue = 730;

    // A look that tells less than this moves no odds that anybody would notice.
    private const double BitsWorthAsking = 0.05;

    /// <summary>Recalls that want an answer, what the desk asked for, then drafts, then looks that would tell most, then seed that is due; three at most.</summary>
    public static IReadOnlyList<TodoItem> Of(IReadOnlyList<OwnCase> own, IReadOnlyList<MemberLoan> loans, DateOnly today)
    {
        var recalled = loans.Where(l => l.OwesRecallAnswer).Select(Recalled);
        var asked = own.SelectMany(c => c.Requests.Take(1).Select(r => Asked(c, r)));
        var drafts = own.Where(c => c.Case.State == CaseState.Draft).Take(1).Select(Draft);
        var looks = own
            .Where(c => c.Case.State is CaseState.Open or CaseState.WaitingForLook && c.Requests.Count == 0)
            .Select(c => (Case: c, Look: c.Ranking?.Plan.Now is [var best, ..] ? best : null))
            .Where(c => c.Look is { } look && look.Bits >= BitsWorthAsking)
            .OrderByDescending(c => c.Look!.BitsPerEffort)
            .Select(c => Look(c.Case, c.Look!));
        var due = loans.Where(l => l.IsOpen && !l.IsRecalled && l.DueOn is { } day && day <= today.AddDays(DaysBeforeDue) && day >= today.AddDays(-DaysAfterDue)).OrderBy(l => l.DueOn).Select(l => Due(l, today));
        return [.. recalled.Concat(asked).Concat(drafts).Concat(looks).Concat(due).Take(Most)];
    }

    private static TodoItem Recalled(MemberLoan loan) => new(
        "part-seed",
        Say[$"{(loan.Variety is null ? loan.PacketCode : Quotes.Of(loan.Variety))} is called back"],
        Say["Don’t save seed from it yet, and don’t pass it on. Say on the packet’s page what became of it."],
        $"/p/{loan.PacketCode}",
        Say["Open the packet"]);

    private static TodoItem Asked(OwnCase own, LookRequestRow request) => new(
        own.Ranking?.Guide.Guide.FindTrait(request.TraitId ?? "")?.States.FirstOrDefault(s => s.Drawing is not null)?.Drawing ?? "slot-whole",
        Say[$"Case {own.Case.Id}: a volunteer asks for a look"],
        request.Message,
        request.TraitId is { } trait ? Text($"/cases/{own.Case.Id}/ask?trait={Uri.EscapeDataString(trait)}") : Text($"/cases/{own.Case.Id}/look"),
        Say["Take this look"]);

    private static TodoItem Draft(OwnCase own) => new(
        "plant-with-empty-label",
        Say[$"Go on with “{own.Case.Title}”"],
        Say["It is kept as you left it, and not filed yet."],
        Text($"/cases/{own.Case.Id}/{(own.Ranking is null or { Parts.Count: 0 } ? FilingStep.Parts : FilingStep.Ask)}"),
        Say["Go on"]);

    private static TodoItem Look(OwnCase own, NextLook look) => new(
        NextLookLines.DrawingOf(look, own.Ranking!.Guide.Guide) ?? "slot-whole",
        Say[$"Case {own.Case.Id}: {look.Question}"],
        MostTelling(own.Case.Title, (int)Math.Ceiling(look.Minutes)),
        Text($"/cases/{own.Case.Id}/ask?trait={Uri.EscapeDataString(look.Trait)}"),
        Say["Take this look"]);

    private static TodoItem Due(MemberLoan loan, DateOnly today) => new(
        "stage-ripe",
        Hoped(loan.Variety is null ? loan.PacketCode : Quotes.Of(loan.Variety), loan.DueOn!.Value, today),
        Say["Save from several plants, and bring what you can. None this year? Say so on the packet’s page."],
        $"/p/{loan.PacketCode}",
        Say["Open the packet"]);

    private static string MostTelling(string title, int minutes) => Say.Count(
        minutes,
        $"“{title}”. {minutes} minute; of all looks this one would tell most.",
        $"“{title}”. {minutes} minutes; of all looks this one would tell most.");

    private static string Hoped(string seed, DateOnly due, DateOnly today) => due < today
        ? Say[$"{seed}: seed was hoped for by {Dates.Day(due)}"]
        : Say[$"{seed}: seed is hoped for by {Dates.Day(due)}"];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
