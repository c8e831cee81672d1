using LibraryDesk.Data.Mail;
using LibraryDesk.Data.People;
using Microsoft.AspNetCore.Identity;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.People;

/// <summary>An invitation as the list shows it.</summary>
public sealed record InvitationView(Guid Id, string Email, string Role, DateTimeOffset ExpiresAt, bool Used, bool Withdrawn);

/// <summary>Librarians invite members, volunteers and librarians; the invited make their own account from the link.</summary>
public sealed class Invitations(
    IDbContextFactory<LibraryDbContext> factory, Accounts accounts, UserManager<DeskUser> users, TimeProvider clock)
{
    public const string LinkOldCode = "people.invitation-old";

    /// <summary>How long a link works.</summary>
    public static readonly TimeSpan Validity = TimeSpan.FromDays(14);

    /// <summary>Writes an invitation and its letter. The code is returned once, to be shown to the librarian; afterwards only its hash is there.</summary>
    /// <param name="linkFor">Turns a code into the address that the letter carries.</param>
    public async Task<Outcome<string>> InviteAsync(
        Actor actor, string? email, string role, Func<string, string> linkFor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (!DeskRoles.All.Contains(role)) return new Refusal("people.role", "Choose member, volunteer or librarian.");
        email = email?.Trim() ?? "";
        if (!System.Net.Mail.MailAddress.TryCreate(email, out _) || email.Length > 254)
            return new Refusal("people.email", "That is not an e-mail address. It looks like name@example.org.");
        if (await users.FindByEmailAsync(email) is not null)
            return new Refusal("people.email-taken", "There is an account with this address. Change its role in the list of people.");

        var code = OneTimeCode.ForLink();
        var now = clock.GetUtcNow();
        await using var db = await factory.CreateDbContextAsync(stop);
        db.Add(new InvitationRow
        {
            Id = Guid.NewGuid(),
            Email = email,
            Role = role,
            CodeHash = OneTimeCode.Hash(code),
            InvitedById = actor.UserId ?? Guid.Empty,
            CreatedAt = now,
            ExpiresAt = now + Validity,
        });
        db.Add(new OutgoingMailRow
        {
            To = email,
            Subject = Say["You are invited to the seed library's desk"],
            Body = $"{InvitedAs(role)}\n\n{Say["Make your account here, within 14 days:"]}\n{linkFor(code)}\n",
            CreatedAt = now,
            DueAt = now,
        });
        await db.SaveChangesAsync(stop);
        return code;
    }

    /// <summary>The open invitation behind a code, or why it cannot be used.</summary>
    public async Task<Outcome<InvitationView>> OpenAsync(string? code, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await FindAsync(db, code, stop);
        return row is null ? Old : View(row);
    }

    /// <summary>Makes the account that the invitation is for.</summary>
    public async Task<Outcome<DeskUser>> AcceptAsync(string? code, string? name, string? password, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await FindAsync(db, code, stop);
        if (row is null) return Old;
        var made = await accounts.MakeAsync(row.Email, name, password, row.Role);
        if (made.Refusal is not null) return made;
        row.UsedAt = clock.GetUtcNow();
        await db.SaveChangesAsync(stop);
        return made;
    }

    /// <summary>Invitations, newest first.</summary>
    public async Task<Outcome<IReadOnlyList<InvitationView>>> ListAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Set<InvitationRow>().OrderByDescending(i => i.CreatedAt).Take(200)
            .Select(i => new InvitationView(i.Id, i.Email, i.Role, i.ExpiresAt, i.UsedAt != null, i.WithdrawnAt != null))
            .ToListAsync(stop);
    }

    /// <summary>Takes an unused invitation back.</summary>
    public async Task<Outcome<InvitationView>> WithdrawAsync(Actor actor, Guid id, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<InvitationRow>().SingleOrDefaultAsync(i => i.Id == id, stop);
        if (row is null || row.UsedAt is not null) return new Refusal("people.invitation-used", "This invitation was used already. Change the person's role instead.");
        row.WithdrawnAt ??= clock.GetUtcNow();
        await db.SaveChangesAsync(stop);
        return View(row);
    }

    // Who is invited has chosen no language yet: the letter speaks that of the librarian who invites.
    private static string InvitedAs(string role) => role switch
    {
        DeskRoles.Librarian => Say["A librarian invites you as librarian."],
        DeskRoles.Volunteer => Say["A librarian invites you as volunteer."],
        _ => Say["A librarian invites you as member."],
    };

    private static Refusal Old { get; } = new(LinkOldCode, "This invitation was used, taken back or is too old. Ask a librarian for a new one.");

    private async Task<InvitationRow?> FindAsync(LibraryDbContext db, string? code, CancellationToken stop)
    {
        var hash = OneTimeCode.Hash(code ?? "");
        var now = clock.GetUtcNow();
        return await db.Set<InvitationRow>().SingleOrDefaultAsync(
            i => i.CodeHash == hash && i.UsedAt == null && i.WithdrawnAt == null && i.ExpiresAt > now, stop);
    }

    private static InvitationView View(InvitationRow row) =>
        new(row.Id, row.Email, row.Role, row.ExpiresAt, row.UsedAt is not null, row.WithdrawnAt is not null);
}
