using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Settings;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Letters to the owner of a case, written in the transaction that causes them.</summary>
public static class CaseLetters
{
    internal static async Task DeterminedAsync(CaseInHand hand, DeterminationRow row, DateTimeOffset now, CancellationToken stop)
    {
        var name = ReviewWords.Name(hand.Guide.Guide, new NamedTaxon(row.Taxon, row.Qualifier));
        var variety = row.VarietyName is null
            ? "Which variety it is cannot be told from looks; that needs a loan, a packet code or a stake."
            : $"By its origin, packet {row.OriginPacketCode}: '{row.VarietyName}'.";
        await WriteAsync(
            hand,
            $"Case {hand.Case.Id} is determined",
            $"{hand.Case.Title}\n\nThe desk has determined your plant: {name}.\n{variety}\n\nWhy: {row.Grounds}\n\nIf something does not fit, open the case again and say what.",
            now,
            stop);
    }

    internal static Task LookAskedAsync(CaseInHand hand, string message, DateTimeOffset now, CancellationToken stop) => WriteAsync(
        hand,
        $"One more look, please: case {hand.Case.Id}",
        $"{hand.Case.Title}\n\nA volunteer would like to know more about your plant:\n\n{message}\n\nWhen you can see it, add a look to the case. There is no hurry, and \"can't see it yet\" is an answer too.",
        now,
        stop);

    internal static Task ReopenedAsync(CaseInHand hand, string reason, DateTimeOffset now, CancellationToken stop) => WriteAsync(
        hand,
        $"Case {hand.Case.Id} is open again",
        $"{hand.Case.Title}\n\nThe library opened your case again:\n\n{reason}\n\nThe earlier determination is kept with the case.",
        now,
        stop);

    private static async Task WriteAsync(CaseInHand hand, string subject, string body, DateTimeOffset now, CancellationToken stop)
    {
        var to = hand.Case.GuestEmail;
        if (hand.Case.OwnerId is { } owner)
            to = await hand.Db.Users.Where(u => u.Id == owner && u.ErasedAt == null).Select(u => u.Email).SingleOrDefaultAsync(stop);
        if (string.IsNullOrWhiteSpace(to)) return;

        var library = await hand.Db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop) ?? new LibrarySettingsRow();
        hand.Db.Add(new OutgoingMailRow
        {
            To = to,
            Subject = subject,
            Body = $"{body}\n\n{WayIn(hand.Case, library)}\n\n{library.Name}\n",
            CreatedAt = now,
            DueAt = now,
        });
    }

    // The secret in a guest's link is not kept, only its hash, so the letter points back to the link they have.
    private static string WayIn(CaseRow row, LibrarySettingsRow library)
    {
        if (row.OwnerId is null) return "Open it with the link in the first letter about this case.";
        return library.PublicAddress.Length == 0
            ? $"You find it among your cases, number {row.Id}."
            : $"{library.PublicAddress.TrimEnd('/')}/cases/{row.Id}";
    }
}
