using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Web.Features.Cases;
using LibraryDesk.Web.Features.Filing;

namespace LibraryDesk.Web.Features.Home;

/// <summary>One thing that would help: a deed, why, and where it is done.</summary>
internal sealed record TodoItem(string Drawing, string Heading, string Why, string Address, string Deed)
{
    private const int Most = 3;
    private const int DaysBeforeDue = 45;
    private const int DaysAfterDue = 180;

    // A look that tells less than this moves no odds that anybody would notice.
    private const double BitsWorthAsking = 0.05;

    /// <summary>What the desk asked for, then drafts, then looks that would tell most, then seed that is due; three at most.</summary>
    public static IReadOnlyList<TodoItem> Of(IReadOnlyList<OwnCase> own, IReadOnlyList<MemberLoan> loans, DateOnly today)
    {
        var asked = own.SelectMany(c => c.Requests.Take(1).Select(r => Asked(c, r)));
        var drafts = own.Where(c => c.Case.State == CaseState.Draft).Take(1).Select(Draft);
        var looks = own
            .Where(c => c.Case.State is CaseState.Open or CaseState.WaitingForLook && c.Requests.Count == 0)
            .Select(c => (Case: c, Look: c.Ranking.Plan.Now is [var best, ..] ? best : null))
            .Where(c => c.Look is { } look && look.Bits >= BitsWorthAsking)
            .OrderByDescending(c => c.Look!.BitsPerEffort)
            .Select(c => Look(c.Case, c.Look!));
        var due = loans.Where(l => l.DueOn is { } day && day <= today.AddDays(DaysBeforeDue) && day >= today.AddDays(-DaysAfterDue)).OrderBy(l => l.DueOn).Select(l => Due(l, today));
        return [.. asked.Concat(drafts).Concat(looks).Concat(due).Take(Most)];
    }

    private static TodoItem Asked(OwnCase own, LookRequestRow request) => new(
        own.Ranking.Guide.Guide.FindTrait(request.TraitId ?? "")?.States.FirstOrDefault(s => s.Drawing is not null)?.Drawing ?? "slot-whole",
        Text($"Case {own.Case.Id}: a volunteer asks for a look"),
        request.Message,
        request.TraitId is { } trait ? Text($"/cases/{own.Case.Id}/ask?trait={Uri.EscapeDataString(trait)}") : Text($"/cases/{own.Case.Id}/look"),
        "Take this look");

    private static TodoItem Draft(OwnCase own) => new(
        "plant-with-empty-label",
        Text($"Go on with “{own.Case.Title}”"),
        "It is kept as you left it, and not filed yet.",
        Text($"/cases/{own.Case.Id}/{(own.Ranking.Parts.Count == 0 ? FilingStep.Parts : FilingStep.Ask)}"),
        "Go on");

    private static TodoItem Look(OwnCase own, NextLook look) => new(
        NextLookLines.DrawingOf(look, own.Ranking.Guide.Guide) ?? "slot-whole",
        Text($"Case {own.Case.Id}: {look.Question}"),
        Text($"“{own.Case.Title}”. {Math.Ceiling(look.Minutes):0} {(look.Minutes > 1 ? "minutes" : "minute")}; of all looks this one would tell most."),
        Text($"/cases/{own.Case.Id}/ask?trait={Uri.EscapeDataString(look.Trait)}"),
        "Take this look");

    private static TodoItem Due(MemberLoan loan, DateOnly today) => new(
        "stage-ripe",
        Text($"{(loan.Variety is null ? loan.PacketCode : $"‘{loan.Variety}’")}: seed {(loan.DueOn < today ? "was" : "is")} hoped for by {loan.DueOn:d MMMM yyyy}"),
        "Save from several plants, and bring what you can. None this year? Say so on the packet’s page.",
        $"/p/{loan.PacketCode}",
        "Open the packet");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
