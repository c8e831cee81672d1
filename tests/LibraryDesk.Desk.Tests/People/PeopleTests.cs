using LibraryDesk.Data.Mail;
using LibraryDesk.Data.People;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Settings;
using LibraryDesk.TestServers;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.People;

public class PeopleTests
{
    private const string Password = "three wet boots";

    [Theory, OnBoth]
    public async Task The_console_code_makes_the_first_librarian_once(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var first = scope.ServiceProvider.GetRequiredService<FirstLibrarian>();
        var code = await first.IssueCodeAsync(default);
        Assert.NotNull(code);
        Assert.Equal(FirstLibrarian.WrongCode, (await first.SetUpAsync("AAAA-BBBB-CCCC-DDDD", "Quillbrook", "h@example.org", "Hester", Password, default)).Refusal?.Code);
        Assert.Null((await first.SetUpAsync(code.ToLowerInvariant().Replace('-', ' '), "Quillbrook", "h@example.org", "Hester", Password, default)).Refusal);
        Assert.Equal("people.set-up-done", (await first.SetUpAsync(code, "Again", "x@example.org", "X", Password, default)).Refusal?.Code);
        Assert.Null(await first.IssueCodeAsync(default));
        Assert.Equal("Quillbrook", (await library.Act<LibrarySettings>().ReadAsync(default)).Name);
    }

    [Theory, OnBoth]
    public async Task A_short_password_leaves_the_code_usable(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var first = scope.ServiceProvider.GetRequiredService<FirstLibrarian>();
        var code = await first.IssueCodeAsync(default);
        Assert.Equal("people.password", (await first.SetUpAsync(code, "Quillbrook", "h@example.org", "Hester", "short", default)).Refusal?.Code);
        Assert.Null((await first.SetUpAsync(code, "Quillbrook", "h@example.org", "Hester", Password, default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task A_closed_library_refuses_sign_up(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var librarian = Actor.Librarian(Guid.NewGuid());
        await library.Act<LibrarySettings>().ChangeAsync(librarian, 0, row => row.SignUpOpen = false, default);
        await using var scope = library.Services.CreateAsyncScope();
        var outcome = await scope.ServiceProvider.GetRequiredService<SignUp>().AsMemberAsync("m@example.org", "Maren", Password, default);
        Assert.Equal(SignUp.InvitationOnly, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task An_invitation_works_once_and_writes_a_letter(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var invitations = scope.ServiceProvider.GetRequiredService<Invitations>();
        var librarian = Actor.Librarian(Guid.NewGuid());
        var invited = await invitations.InviteAsync(librarian, "v@example.org", DeskRoles.Volunteer, code => "https://x/" + code, default);
        Assert.True(invited.TryGet(out var code, out _));
        await using (var db = await library.OpenAsync())
            Assert.Contains(code, (await db.Set<OutgoingMailRow>().SingleAsync()).Body, StringComparison.Ordinal);
        var accepted = await invitations.AcceptAsync(code, "Vera", Password, default);
        Assert.True(accepted.TryGet(out var user, out _));
        Assert.True(await scope.ServiceProvider.GetRequiredService<UserManager<DeskUser>>().IsInRoleAsync(user, DeskRoles.Volunteer));
        Assert.Equal(Invitations.LinkOldCode, (await invitations.AcceptAsync(code, "Vera", Password, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task An_invitation_grows_old(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var invitations = scope.ServiceProvider.GetRequiredService<Invitations>();
        var invited = await invitations.InviteAsync(Actor.Librarian(Guid.NewGuid()), "v@example.org", DeskRoles.Volunteer, code => code, default);
        library.Clock.Advance(Invitations.Validity + TimeSpan.FromMinutes(1));
        Assert.True(invited.TryGet(out var code, out _));
        Assert.Equal(Invitations.LinkOldCode, (await invitations.OpenAsync(code, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Members_and_volunteers_cannot_invite_or_list_people(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        foreach (var actor in new[] { Actor.Visitor, Actor.Member(Guid.NewGuid()), Actor.Volunteer(Guid.NewGuid()) })
        {
            var invited = await scope.ServiceProvider.GetRequiredService<Invitations>().InviteAsync(actor, "a@example.org", DeskRoles.Librarian, code => code, default);
            Assert.Equal(PeopleRefusals.MayNotCode, invited.Refusal?.Code);
            var found = await scope.ServiceProvider.GetRequiredService<PeopleDirectory>().FindAsync(actor, null, default);
            Assert.Equal(PeopleRefusals.MayNotCode, found.Refusal?.Code);
        }
    }

    [Theory, OnBoth]
    public async Task Erasing_a_member_leaves_no_name_or_address(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var made = await scope.ServiceProvider.GetRequiredService<SignUp>().AsMemberAsync("maren@example.org", "Maren Oduya", Password, default);
        Assert.True(made.TryGet(out var user, out _));
        var outcome = await scope.ServiceProvider.GetRequiredService<PeopleDirectory>().EraseAsync(Actor.Member(user.Id), user.Id);
        Assert.Null(outcome.Refusal);
        await using var db = await library.OpenAsync();
        var row = await db.Users.AsNoTracking().SingleAsync(u => u.Id == user.Id);
        var kept = string.Join(' ', row.UserName, row.NormalizedUserName, row.Email, row.NormalizedEmail, row.DisplayName, row.SearchName, row.PhoneNumber);
        Assert.DoesNotContain("maren", kept, StringComparison.OrdinalIgnoreCase);
        Assert.Null(row.PasswordHash);
    }

    [Theory, OnBoth]
    public async Task The_last_librarian_stays_one(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var first = scope.ServiceProvider.GetRequiredService<FirstLibrarian>();
        var made = await first.SetUpAsync(await first.IssueCodeAsync(default), "Quillbrook", "h@example.org", "Hester", Password, default);
        Assert.True(made.TryGet(out var user, out _));
        var people = scope.ServiceProvider.GetRequiredService<PeopleDirectory>();
        var actor = Actor.Librarian(user.Id);
        Assert.Equal("people.last-librarian", (await people.ChangeRoleAsync(actor, user.Id, DeskRoles.Member)).Refusal?.Code);
        Assert.Equal("people.last-librarian", (await people.EraseAsync(actor, user.Id)).Refusal?.Code);
    }
}
