using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Words;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Notices;

/// <summary>Something to tell one person. It is written in the transaction that causes it.</summary>
/// <param name="About">What it is about; a second notice to the same person about the same thing is not shown again.</param>
/// <param name="Heading">One line: the heading in the app, the subject of the letter.</param>
/// <param name="Text">In the app: one or two sentences.</param>
/// <param name="Address">Where to go, beginning with a slash.</param>
/// <param name="Letter">The body of the letter, without the way to the page and the library's name; these are added.</param>
internal sealed record Notice(NoticeKind Kind, string About, string Heading, string Text, string Address, string Letter)
{
    private const int LongestText = 1200;
    private const int LongestHeading = 200;

    /// <summary>Tells a person with an account in their language and in the ways they chose. Changes tracked rows only; the act that calls it saves.</summary>
    /// <param name="words">Writes the notice; called while the person's language is spoken.</param>
    /// <returns>False when they chose not to be told, or cannot be reached in the way they chose.</returns>
    public static async Task<bool> TellAsync(LibraryDbContext db, Guid person, Func<Notice> words, DateTimeOffset now, CancellationToken stop)
    {
        var user = await db.Users.Where(u => u.Id == person && u.ErasedAt == null).Select(u => new { u.Email }).SingleOrDefaultAsync(stop);
        if (user is null) return false;
        using var spoken = Languages.Speak(await ChosenLanguage.OfAsync(db, person, stop));
        var notice = words();
        var way = await NoticeChoices.OfAsync(db, person, notice.Kind, stop);
        var told = false;
        if (way is NoticeWay.InApp or NoticeWay.Both) told = await notice.ShowAsync(db, person, now, stop);
        if (way is NoticeWay.Email or NoticeWay.Both && !string.IsNullOrWhiteSpace(user.Email))
        {
            var library = await LibraryAsync(db, stop);
            db.Add(notice.Mail(user.Email, $"{notice.WayIn(library)}\n\n{WayOut(library)}", library, now));
            told = true;
        }
        return told;
    }

    /// <summary>Writes to somebody without an account; they have no other way.</summary>
    /// <param name="wayIn">How they come to the page, in words or as an address.</param>
    public async Task WriteToGuestAsync(LibraryDbContext db, string email, string wayIn, DateTimeOffset now, CancellationToken stop) =>
        db.Add(Mail(email, wayIn, await LibraryAsync(db, stop), now));

    private async Task<bool> ShowAsync(LibraryDbContext db, Guid person, DateTimeOffset now, CancellationToken stop)
    {
        var known = db.Set<NoticeRow>().Local.Any(n => n.PersonId == person && n.About == About)
            || await db.Set<NoticeRow>().AnyAsync(n => n.PersonId == person && n.About == About, stop);
        if (known) return true;
        db.Add(new NoticeRow { PersonId = person, Kind = Kind, About = About, Heading = Short(Heading, LongestHeading), Text = Short(Text, LongestText), Address = Address, At = now });
        return true;
    }

    private OutgoingMailRow Mail(string to, string ending, LibrarySettingsRow library, DateTimeOffset now) => new()
    {
        To = to,
        Subject = Short(Heading, LongestHeading),
        Body = $"{Letter}\n\n{ending}\n\n{library.Name}\n",
        CreatedAt = now,
        DueAt = now,
    };

    private static string Short(string text, int longest) => text.Length > longest ? text[..(longest - 1)] + "…" : text;

    private string WayIn(LibrarySettingsRow library) => library.PublicAddress.Length == 0
        ? Say["Sign in at the desk, and you find it among your notices."]
        : $"{library.PublicAddress.TrimEnd('/')}{Address}";

    private static string WayOut(LibrarySettingsRow library) => library.PublicAddress.Length == 0
        ? Say["You choose under My account which letters the desk writes to you."]
        : Say[$"You choose which letters the desk writes to you: {WayToChoose(library)}"];

    private static string WayToChoose(LibrarySettingsRow library) => $"{library.PublicAddress.TrimEnd('/')}/account/notices";

    private static async Task<LibrarySettingsRow> LibraryAsync(LibraryDbContext db, CancellationToken stop) =>
        await db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop) ?? new LibrarySettingsRow();
}
