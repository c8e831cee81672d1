using System.Net.Mail;
using System.Security.Cryptography;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Begins a case as a draft, so that nothing is lost when the browser closes. A tray begins one case for each plant.</summary>
public sealed class StartCase(
    IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, LibrarySettings settings, GuestKeySeal seal, LibraryClock clock)
{
    public const int MostPlants = 60;
    public const int LongestTitle = 160;

    public async Task<Outcome<StartedCase>> StartAsync(Actor actor, NewCase wanted, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(wanted);
        if (WhyNot(actor, wanted) is { } no) return no;
        if (await shelf.CurrentAsync(wanted.GuideId, stop) is not { } guide) return NoSuchGuide;
        var library = await settings.ReadAsync(stop);

        var now = clock.Now;
        var asGuest = !actor.IsSignedIn || wanted.ForWalkIn;
        var key = asGuest ? NewKey() : null;
        var batch = wanted.Plants > 1 ? Guid.NewGuid() : (Guid?)null;
        List<CaseRow> cases = [];
        await using var db = await factory.CreateDbContextAsync(stop);
        await db.Database.CreateExecutionStrategy().ExecuteAsync(async () =>
        {
            db.ChangeTracker.Clear();
            cases = Rows(actor, wanted, guide.Guide, key, batch, now);
            await using var turn = await db.Database.BeginTransactionAsync(stop);
            db.AddRange(cases);
            await db.SaveChangesAsync(stop);
            foreach (var row in cases)
            {
                db.Add(new LookRow { CaseId = row.Id, Number = 1, Date = clock.DayOf(now), ById = actor.UserId, CreatedAt = now, Parts = FirstParts(guide.Guide, wanted.Specimen) });
                db.AddCaseEvent(row.Id, CaseEvents.Started, actor, now);
            }
            if (key is not null && Blank(wanted.GuestEmail) is { } email)
                db.Add(Letter(email, library.Name, library.PublicAddress is { Length: > 0 } set ? set : wanted.SiteAddress, key, cases, now));
            await db.SaveChangesAsync(stop);
            await turn.CommitAsync(stop);
        });
        return new StartedCase([.. cases.Select(c => c.Id)], key);
    }

    private List<CaseRow> Rows(Actor actor, NewCase wanted, CropGuide guide, string? key, Guid? batch, DateTimeOffset now) =>
        [.. Enumerable.Range(1, wanted.Plants).Select(number => new CaseRow
        {
            Title = TitleOf(wanted, number),
            GuideId = guide.Id,
            GuideVersion = guide.Version,
            State = CaseState.Draft,
            Specimen = wanted.Specimen,
            OwnerId = key is null ? actor.UserId : null,
            FiledForById = wanted.ForWalkIn ? actor.UserId : null,
            GuestEmail = key is null ? null : Blank(wanted.GuestEmail),
            GuestLanguage = key is null ? null : Languages.Now,
            GuestKeyHash = key is null ? null : CaseAccess.HashOf(key),
            GuestKeyLocked = key is null ? null : seal.Lock(key),
            BatchId = batch,
            CreatedAt = now,
            StateSince = now,
        })];

    /// <summary>What the plant carries goes without asking for a fruit or seeds alone; empty where it has to be asked.</summary>
    internal static string FirstParts(CropGuide guide, Specimen specimen)
    {
        string[] wanted = specimen switch
        {
            Specimen.SeedsAlone => ["seed"],
            Specimen.Seedling => ["leaves"],
            _ => [],
        };
        return string.Join(',', wanted.Where(id => guide.Parts.Any(p => p.Id == id)));
    }

    private static Refusal? WhyNot(Actor actor, NewCase wanted)
    {
        if (wanted.ForWalkIn && !actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        if (TitleFault(wanted.Title) is { } unnamed) return unnamed;
        if (wanted.Plants is < 1 or > MostPlants) return new Refusal("case.plants", "A tray has between 1 and 60 plants. File a larger one in two goes.");
        if (wanted.Plants > 1 && wanted.Specimen != Specimen.Seedling) return new Refusal("case.plants", "Only a tray of seedlings is filed as several plants. File other plants one by one.");
        var email = Blank(wanted.GuestEmail);
        if (email is null && !actor.IsSignedIn) return new Refusal("case.email", "Give an e-mail address, so that the link to your case reaches you, or sign in.");
        if (email is not null && (!actor.IsSignedIn || wanted.ForWalkIn) && (email.Length > 256 || !MailAddress.TryCreate(email, out _)))
            return new Refusal("case.email", "This is not an e-mail address we can write to. It looks like name@example.org.");
        return null;
    }

    internal static Refusal? TitleFault(string? title) =>
        Blank(title) is null ? new Refusal("case.title", "Give it a name you will know it by, such as \"Pepper in the blue pot\".")
        : title!.Length > LongestTitle ? new Refusal("case.title", "Keep the name under 160 characters; there is room for notes later.")
        : null;

    internal static Refusal NoSuchGuide { get; } = new("case.crop", "The desk has no guide for this crop. Choose one from the list.");

    private static string TitleOf(NewCase wanted, int number) => wanted.Plants == 1
        ? wanted.Title.Trim()
        : Say[$"{wanted.Title.Trim()[..Math.Min(wanted.Title.Trim().Length, LongestTitle - 12)]}, plant {number}"];

    // 256 random bits in letters that survive being copied out of a letter.
    private static string NewKey() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    private static OutgoingMailRow Letter(string to, string library, string site, string key, List<CaseRow> cases, DateTimeOffset now) => new()
    {
        To = to,
        Subject = Say[$"Your case {cases[0].Id} at {library}"],
        Body = string.Join(
            "\n\n",
            Say[$"You started a case at {library}: {cases[0].Title}."],
            Say["This link opens it on any device. Keep it: whoever has it can see and change the case."],
            $"{site.TrimEnd('/')}/c/{key}",
            Say["If it was not you, do nothing. A case that is not filed is seen by nobody."]),
        CreatedAt = now,
        DueAt = now,
    };

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
