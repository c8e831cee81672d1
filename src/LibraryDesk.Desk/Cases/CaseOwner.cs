using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Notices;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Words;

namespace LibraryDesk.Desk.Cases;

/// <summary>Tells whoever a case belongs to, in their language: a member in the ways they chose, a guest by letter.</summary>
internal static class CaseOwner
{
    /// <summary>The language that a case's owner or guest is written to in; null where none is known.</summary>
    public static async Task<string?> LanguageAsync(LibraryDbContext db, CaseRow row, CancellationToken stop) =>
        row.OwnerId is { } owner ? await ChosenLanguage.OfAsync(db, owner, stop) : row.GuestLanguage;

    /// <summary>Changes tracked rows only; the act that calls it saves.</summary>
    /// <param name="words">Writes the notice; called while the owner's language is spoken.</param>
    public static async Task TellAsync(LibraryDbContext db, CaseRow row, GuestKeySeal seal, Func<Notice> words, DateTimeOffset now, CancellationToken stop)
    {
        if (row.OwnerId is { } owner)
        {
            await Notice.TellAsync(db, owner, words, now, stop);
        }
        else if (!string.IsNullOrWhiteSpace(row.GuestEmail))
        {
            using var spoken = Languages.Speak(row.GuestLanguage);
            await words().WriteToGuestAsync(db, row.GuestEmail, await seal.WayInAsync(db, row, stop), now, stop);
        }
    }

    /// <summary>What the owner was asked to look at is seen or no longer wanted: its notices are not new any more. Changes tracked rows only.</summary>
    public static async Task AskedIsOverAsync(LibraryDbContext db, CaseRow row, DateTimeOffset now, CancellationToken stop)
    {
        var about = AboutLooks(row.Id);
        var open = db.Set<NoticeRow>().Where(n => n.PersonId == row.OwnerId && n.Kind == NoticeKind.LookAsked && n.ReadAt == null && n.About.StartsWith(about));
        foreach (var notice in await open.ToListAsync(stop)) notice.ReadAt = now;
    }

    /// <summary>What every notice about a look at this case begins with in <see cref="Notice.About"/>.</summary>
    public static string AboutLooks(long caseId) => string.Create(CultureInfo.InvariantCulture, $"look:{caseId}:");
}
