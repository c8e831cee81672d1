using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Settings;

public class LibrarySettingsTests
{
    [Theory, OnBoth]
    public async Task A_librarian_changes_the_name(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var settings = library.Act<LibrarySettings>();
        var outcome = await settings.ChangeAsync(Actor.Librarian(Guid.NewGuid()), 0, row => row.Name = "Quillbrook", default);
        Assert.Null(outcome.Refusal);
        Assert.Equal("Quillbrook", (await settings.ReadAsync(default)).Name);
    }

    [Theory, OnBoth]
    public async Task A_form_that_shows_an_older_state_is_refused(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var settings = library.Act<LibrarySettings>();
        var librarian = Actor.Librarian(Guid.NewGuid());
        await settings.ChangeAsync(librarian, 0, row => row.Name = "First", default);
        var outcome = await settings.ChangeAsync(librarian, 0, row => row.Name = "Second", default);
        Assert.Equal("settings.changed-meanwhile", outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_volunteer_may_not_change_settings(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var outcome = await library.Act<LibrarySettings>().ChangeAsync(Actor.Volunteer(Guid.NewGuid()), 0, row => row.Name = "Mine", default);
        Assert.Equal(PeopleRefusals.MayNotCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_member_who_takes_a_packet_gets_the_day_of_the_settings_and_a_librarian_says_it_for_others(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var settings = library.Act<LibrarySettings>();
        Assert.Equal("settings.loan", (await settings.ChangeAsync(ASeedLibrary.Librarian, 0, row => row.LoanDays = -1, default)).Refusal?.Code);
        (await settings.ChangeAsync(ASeedLibrary.Librarian, 0, row => row.LoanDays = 300, default)).Allowed();
        var packets = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 3);
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(packets[0]), default)).Allowed();
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(packets[1], ASeedLibrary.Member.UserId), default)).Allowed();
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(packets[2]), default)).Allowed();
        await using var db = await library.OpenAsync();
        // 300 days after 1 August 2026.
        Assert.Equal([new DateOnly(2027, 5, 28), null, new DateOnly(2027, 5, 28)], await db.Set<LoanRow>().OrderBy(loan => loan.Id).Select(loan => loan.DueOn).ToListAsync());
    }
}
