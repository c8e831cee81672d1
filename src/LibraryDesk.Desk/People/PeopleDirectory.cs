using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.People;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Search;
using Microsoft.AspNetCore.Identity;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.People;

/// <summary>A person as librarians see them.</summary>
public sealed record PersonView(Guid Id, string Name, string Email, string Role, DateTimeOffset JoinedAt, bool SignInStopped, bool Erased);

/// <summary>Librarians look after accounts: roles, stopped sign-ins, erasure. Nobody else sees people.</summary>
public sealed class PeopleDirectory(IDbContextFactory<LibraryDbContext> factory, UserManager<DeskUser> users, TimeProvider clock)
{
    /// <summary>People by name or address, at most 200.</summary>
    public async Task<Outcome<IReadOnlyList<PersonView>>> FindAsync(Actor actor, string? text, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        var wanted = (text ?? "").Trim().ToUpperInvariant();
        return await ReadAsync(all => all.Where(user => wanted == "" || user.NormalizedEmail!.Contains(wanted) || user.SearchName.Contains(wanted)), stop);
    }

    /// <summary>One person by id, also one whose details were erased.</summary>
    public async Task<Outcome<PersonView>> ByIdAsync(Actor actor, Guid id, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        return await ReadAsync(all => all.Where(user => user.Id == id), stop) is [var person] ? person : Gone;
    }

    /// <summary>Who could be meant by an address or a name: the one it is exactly, else all that have it in their name or address. Never empty.</summary>
    public async Task<Outcome<IReadOnlyList<PersonView>>> MeantAsync(Actor actor, string? who, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (string.IsNullOrWhiteSpace(who)) return new Refusal("people.who", "Say who it is: their e-mail address, or part of their name.");
        if (!(await FindAsync(actor, who, stop)).TryGet(out var found, out var no)) return no;
        var wanted = who.Trim();
        var standing = found.Where(person => !person.Erased).ToArray();
        var exact = standing.Where(person => string.Equals(person.Email, wanted, StringComparison.OrdinalIgnoreCase) || string.Equals(person.Name, wanted, StringComparison.OrdinalIgnoreCase)).ToArray();
        if (standing.Length == 0) return new Refusal("people.who", "Nobody here goes by that. Ask them to sign up first, or check the spelling.");
        return exact.Length == 1 ? exact : standing;
    }

    /// <summary>One person, by address or by name; two of a name are told apart by their addresses.</summary>
    public async Task<Outcome<PersonView>> OneAsync(Actor actor, string? who, CancellationToken stop)
    {
        if (!(await MeantAsync(actor, who, stop)).TryGet(out var meant, out var nobody)) return nobody;
        return meant.Count == 1
            ? meant[0]
            : new Refusal("people.who", $"Several people go by that: {string.Join(", ", meant.Take(5).Select(person => person.Email))}. Give the e-mail address.");
    }

    /// <summary>Names of people by id, for screens that a librarian or the person may see. Erased people are "a former member".</summary>
    public async Task<IReadOnlyDictionary<Guid, string>> NamesAsync(IReadOnlyCollection<Guid> ids, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var names = await db.Users.Where(user => ids.Contains(user.Id))
            .Select(user => new { user.Id, user.DisplayName }).ToListAsync(stop);
        return names.ToDictionary(user => user.Id, user => user.DisplayName.Length == 0 ? Say["a former member"] : user.DisplayName);
    }

    /// <summary>Gives one role. The last librarian keeps theirs.</summary>
    public async Task<Outcome<DeskUser>> ChangeRoleAsync(Actor actor, Guid id, string role)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (!DeskRoles.All.Contains(role)) return new Refusal("people.role", "Choose member, volunteer or librarian.");
        if (await users.FindByIdAsync(id.ToString()) is not { ErasedAt: null } user) return Gone;
        if (role != DeskRoles.Librarian && await IsLastLibrarianAsync(user)) return LastLibrarian;
        if (role != DeskRoles.Librarian && id == actor.UserId) return OwnRights;
        await users.RemoveFromRolesAsync(user, await users.GetRolesAsync(user));
        await users.AddToRoleAsync(user, role);
        // Open sessions learn of the new role when their stamp is checked.
        await users.UpdateSecurityStampAsync(user);
        return user;
    }

    /// <summary>Stops or allows sign-in.</summary>
    public async Task<Outcome<DeskUser>> StopSignInAsync(Actor actor, Guid id, bool stopped)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (await users.FindByIdAsync(id.ToString()) is not { ErasedAt: null } user) return Gone;
        if (stopped && await IsLastLibrarianAsync(user)) return LastLibrarian;
        if (stopped && id == actor.UserId) return OwnRights;
        await users.SetLockoutEndDateAsync(user, stopped ? DateTimeOffset.MaxValue : null);
        await users.UpdateSecurityStampAsync(user);
        return user;
    }

    /// <summary>
    /// Erases what says who a person is, the letters to them too; the ledger keeps their opaque id, so the chain still verifies. A person may
    /// erase themselves, and a librarian anybody who asks for it; the last librarian stays.
    /// </summary>
    public async Task<Outcome<DeskUser>> EraseAsync(Actor actor, Guid id)
    {
        if (!actor.IsLibrarian && actor.UserId != id) return PeopleRefusals.LibrariansOnly;
        if (await users.FindByIdAsync(id.ToString()) is not { } user) return Gone;
        if (await IsLastLibrarianAsync(user)) return LastLibrarian;
        await users.RemoveFromRolesAsync(user, await users.GetRolesAsync(user));
        var address = user.Email;
        user.DisplayName = "";
        user.SearchName = "";
        user.Email = null;
        user.UserName = $"erased-{id:N}";
        user.PhoneNumber = null;
        user.PasswordHash = null;
        user.ErasedAt = clock.GetUtcNow();
        user.LockoutEnd = DateTimeOffset.MaxValue;
        await using var db = await factory.CreateDbContextAsync(default);
        await ForgetLettersAsync(db, address);
        await db.UserPasskeys.Where(key => key.UserId == id).ExecuteDeleteAsync();
        await db.UserClaims.Where(claim => claim.UserId == id).ExecuteDeleteAsync();
        await db.Set<NoticeRow>().Where(notice => notice.PersonId == id).ExecuteDeleteAsync();
        await db.Set<NoticeChoiceRow>().Where(choice => choice.PersonId == id).ExecuteDeleteAsync();
        await db.Set<CalendarLinkRow>().Where(link => link.PersonId == id).ExecuteDeleteAsync();
        // A note beside an answer may say who has the packet now.
        await db.Set<RecallAnswerRow>().Where(answer => answer.PersonId == id).ExecuteUpdateAsync(answer => answer.SetProperty(row => row.Note, (string?)null));
        // RequireUniqueEmail refuses an empty address, so the row is saved past that check.
        db.Users.Update(user);
        user.NormalizedEmail = null;
        user.NormalizedUserName = user.UserName.ToUpperInvariant();
        user.SecurityStamp = Guid.NewGuid().ToString("N");
        await db.SaveChangesAsync();
        // Where they gave seed, search still knows the words of their name.
        await new SearchIndex(db, default).ForgetDonorAsync(id);
        return user;
    }

    // Letters and invitations carry the address, and what is in them.
    private static async Task ForgetLettersAsync(LibraryDbContext db, string? address)
    {
        if (address is null) return;
        var lower = address.ToLowerInvariant();
#pragma warning disable CA1304, CA1311, CA1862 // Becomes lower() in SQL, on both databases.
        await db.Set<OutgoingMailRow>().Where(letter => letter.To.ToLower() == lower).ExecuteDeleteAsync();
        await db.Set<InvitationRow>().Where(invitation => invitation.Email.ToLower() == lower).ExecuteDeleteAsync();
#pragma warning restore CA1304, CA1311, CA1862
    }

    private async Task<List<PersonView>> ReadAsync(Func<IQueryable<DeskUser>, IQueryable<DeskUser>> choose, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var now = clock.GetUtcNow();
        var rows = await (
            from user in choose(db.Users)
            orderby user.DisplayName, user.Id
            select new
            {
                user.Id,
                user.DisplayName,
                user.Email,
                user.JoinedAt,
                user.LockoutEnd,
                user.ErasedAt,
                Roles = (from link in db.UserRoles where link.UserId == user.Id join role in db.Roles on link.RoleId equals role.Id select role.Name).ToList(),
            }).Take(200).ToListAsync(stop);
        return rows.ConvertAll(row => new PersonView(
            row.Id, row.DisplayName, row.Email ?? "", DeskRoles.All.LastOrDefault(row.Roles.Contains) ?? DeskRoles.Member,
            row.JoinedAt, row.LockoutEnd > now, row.ErasedAt is not null));
    }

    internal static Refusal Gone { get; } = new("people.gone", "There is no such person any more. Reload the list.");

    private static Refusal LastLibrarian { get; } =
        new("people.last-librarian", "This is the last librarian. Make somebody else a librarian first.");

    // One press would end the session it was made in, with nobody there to take it back.
    private static Refusal OwnRights { get; } =
        new("people.own-rights", "Your own rights are taken away by another librarian, not by yourself. Ask one to do it.");

    private async Task<bool> IsLastLibrarianAsync(DeskUser user) =>
        await users.IsInRoleAsync(user, DeskRoles.Librarian)
        && (await users.GetUsersInRoleAsync(DeskRoles.Librarian)).Count(other => other.ErasedAt is null) == 1;
}
