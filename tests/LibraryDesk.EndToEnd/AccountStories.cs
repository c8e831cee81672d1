using LibraryDesk.TestServers;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

public class AccountStories(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Theory, OnBoth]
    public async Task A_new_library_is_set_up_and_its_people_come_in(string database)
    {
        await using var server = await DeskServer.StartAsync(database);
        var librarian = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await librarian.SetUpAsync(server, "Hester Lorne", "hester@example.org");

        var volunteer = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await librarian.InviteAsync(volunteer, "Vera Quist", "vera@example.org", "volunteer");
        await Assertions.Expect(volunteer.GetByRole(AriaRole.Link, new() { Name = "Queue" })).ToBeVisibleAsync();

        var member = await browser.OpenAsync(server, DeskBrowser.Phone, script: false);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        await member.GotoAsync("/people");
        await Assertions.Expect(member.GetByText("vera@example.org")).Not.ToBeVisibleAsync();
        await Assertions.Expect(member.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("not open to your account");
    }

    [Fact]
    public async Task What_was_acknowledged_is_there_after_the_server_is_killed()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        await server.KillAndStartAgainAsync();
        await member.GotoAsync("/account");
        await Assertions.Expect(member.GetByText("maren@example.org")).ToBeVisibleAsync();
    }
}
