using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Settings;
using LibraryDesk.TestServers;

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
}
