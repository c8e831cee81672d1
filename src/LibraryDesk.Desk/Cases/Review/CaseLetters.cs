using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Notices;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Words.Guides;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>What the owner of a case is told, in the ways they chose, written in the transaction that causes it. A guest is written to.</summary>
public static class CaseLetters
{
    internal static Task DeterminedAsync(CaseInHand hand, DeterminationRow row, DateTimeOffset now, CancellationToken stop) => TellAsync(
        hand,
        NoticeKind.Decided,
        Text($"determined:{hand.Case.Id}:{row.Round}"),
        () =>
        {
            var determined = Say[$"The desk has determined your plant: {GuideBooks.Say(hand.Case.GuideId, ReviewWords.Name(hand.Guide.Guide, new NamedTaxon(row.Taxon, row.Qualifier)))}."];
            var variety = row.VarietyName is null
                ? Say["Which variety it is cannot be told from looks; that needs a loan, a packet code or a stake."]
                : Say[$"By its origin, packet {row.OriginPacketCode}: '{row.VarietyName}'."];
            return new Words(
                Say[$"Case {hand.Case.Id} is determined"],
                $"{determined} {variety}",
                $"{determined}\n{variety}\n\n{Say[$"Why: {PeoplesGrounds.Of(row)}"]}\n\n{Say["If something does not fit, open the case again and say what."]}");
        },
        now,
        stop);

    internal static Task LookAskedAsync(CaseInHand hand, string message, DateTimeOffset now, CancellationToken stop) => TellAsync(
        hand,
        NoticeKind.LookAsked,
        CaseOwner.AboutLooks(hand.Case.Id) + Text($"{now.UtcTicks}"),
        () => new Words(
            Say[$"One more look, please: case {hand.Case.Id}"],
            GuideBooks.Say(hand.Case.GuideId, message),
            $"{Say["A volunteer would like to know more about your plant:"]}\n\n{GuideBooks.Say(hand.Case.GuideId, message)}\n\n{Say["When you can see it, add a look to the case. There is no hurry, and \"can't see it yet\" is an answer too."]}"),
        now,
        stop);

    internal static Task ReopenedAsync(CaseInHand hand, string reason, DateTimeOffset now, CancellationToken stop) => TellAsync(
        hand,
        NoticeKind.Decided,
        Text($"reopened:{hand.Case.Id}:{hand.Case.Round}"),
        () => new Words(
            Say[$"Case {hand.Case.Id} is open again"],
            Say[$"The library opened your case again: {reason}"],
            $"{Say["The library opened your case again:"]}\n\n{reason}\n\n{Say["The earlier determination is kept with the case."]}"),
        now,
        stop);

    private static Task TellAsync(CaseInHand hand, NoticeKind kind, string about, Func<Words> words, DateTimeOffset now, CancellationToken stop)
    {
        var row = hand.Case;
        return CaseOwner.TellAsync(hand.Db, row, hand.Seal, Write, now, stop);

        Notice Write()
        {
            var (heading, text, letter) = words();
            return new Notice(kind, about, heading, $"“{row.Title}”. {text}", Text($"/cases/{row.Id}"), $"{row.Title}\n\n{letter}");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record Words(string Heading, string Text, string Letter);
}
