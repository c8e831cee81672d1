using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.People;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.Lineage.Seeds;
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

    [Theory, OnBoth]
    public async Task A_librarian_erases_a_member_at_the_counter_and_the_ledger_still_verifies(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var people = scope.ServiceProvider.GetRequiredService<PeopleDirectory>();
        await library.AddPersonAsync(ASeedLibrary.Member, "Maren@example.org");
        var code = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "round fruit came up", default)).Allowed().Hold.Value;
        (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();

        (await people.EraseAsync(ASeedLibrary.Librarian, ASeedLibrary.Member.UserId!.Value)).Allowed();

        var report = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed();
        Assert.True(report.IsSound, report.Fault?.Why);
        var loan = Assert.Single((await library.Act<MemberLoans>().OpenAsync(ASeedLibrary.Librarian, default)).Allowed().Loans);
        Assert.Equal("somebody whose details were erased", loan.Borrower);
        await using var db = await library.OpenAsync();
        Assert.Empty(await db.Set<OutgoingMailRow>().ToListAsync());
        Assert.True((await people.ByIdAsync(ASeedLibrary.Librarian, ASeedLibrary.Member.UserId!.Value, default)).Allowed().Erased);
    }

    [Theory, OnBoth]
    public async Task Nobody_but_a_librarian_erases_another_or_reads_of_them(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        await library.AddPersonAsync(ASeedLibrary.Member, "maren@example.org");
        var id = ASeedLibrary.Member.UserId!.Value;
        foreach (var actor in new[] { Actor.Visitor, ASeedLibrary.OtherMember, Actor.Volunteer(Guid.NewGuid()) })
        {
            Assert.Equal(PeopleRefusals.MayNotCode, (await scope.ServiceProvider.GetRequiredService<PeopleDirectory>().EraseAsync(actor, id)).Refusal?.Code);
            Assert.Equal(PeopleRefusals.MayNotCode, (await scope.ServiceProvider.GetRequiredService<ReadPerson>().RunAsync(actor, id, default)).Refusal?.Code);
        }
        await using var db = await library.OpenAsync();
        Assert.Equal("A member", (await db.Users.SingleAsync(user => user.Id == id)).DisplayName);
    }

    [Theory, OnBoth]
    public async Task A_persons_record_tells_what_is_out_what_came_home_what_they_wait_for_and_what_they_owe(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        var read = scope.ServiceProvider.GetRequiredService<ReadPerson>();
        await library.AddPersonAsync(ASeedLibrary.Member, "maren@example.org");
        var id = ASeedLibrary.Member.UserId!.Value;
        var returned = await library.LentPacketAsync();
        var home = (await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(returned, null, ASeedLibrary.Facts(), Quantity.OfSeeds(200)), default)).Allowed().Lot!.Value;
        var open = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, open, "round fruit came up", default)).Allowed().Hold.Value;
        var asked = (await library.ReceiveAsync()).Lot.ToString()!;
        await library.PacketsAsync(asked);
        (await library.Act<RequestPacket>().RunAsync(ASeedLibrary.Member, asked, default)).Allowed();
        await using (var db = await library.OpenAsync())
        {
            var now = library.Clock.GetUtcNow();
            foreach (var (title, filed) in new[] { ("Filed", (DateTimeOffset?)now), ("Draft", null) })
                db.Add(new CaseRow { Title = title, GuideId = "capsicum", GuideVersion = "2026.1", State = CaseState.Open, OwnerId = id, CreatedAt = now, FiledAt = filed, StateSince = now });
            await db.SaveChangesAsync();
        }

        var record = (await read.RunAsync(ASeedLibrary.Librarian, id, default)).Allowed();

        Assert.Equal([open, returned], record.Loans.OrderBy(loan => !loan.IsOpen).Select(loan => loan.PacketCode));
        Assert.Equal([home.ToString()], record.CameHome[record.Loans.Single(loan => !loan.IsOpen).LoanId]);
        Assert.Equal([asked], record.Requests.Select(request => request.LotCode));
        Assert.Equal([(hold, open)], record.Owed.Select(owed => (owed.HoldId, owed.PacketCode)));
        Assert.Equal(["Filed"], record.Cases.Select(filed => filed.Title));

        (await library.Act<RecallList>().AnswerAsync(ASeedLibrary.Member, hold, open, RecallAnswer.NotSown, default)).Allowed();
        Assert.Empty((await read.RunAsync(ASeedLibrary.Librarian, id, default)).Allowed().Owed);
        Assert.Equal("people.gone", (await read.RunAsync(ASeedLibrary.Librarian, Guid.NewGuid(), default)).Refusal?.Code);
    }
}
