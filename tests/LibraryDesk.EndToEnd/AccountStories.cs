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
    public async Task A_mangled_number_in_an_address_leads_to_nothing_and_breaks_nothing()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone);
        await page.SignUpAsync("Maren Oduya", "maren@example.org");
        var answer = await page.GotoAsync("/shelf?page=abc");
        Assert.Equal(404, answer?.Status);
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("There is nothing at this address");
    }

    [Fact]
    public async Task An_address_that_leads_nowhere_is_told_in_the_form_the_caller_reads()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone);
        await page.GotoAsync("/no-such-page");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("nothing at this address");
        var form = page.Context.APIRequest.CreateFormData();
        form.Set("a", "1");

        var posted = await page.Context.APIRequest.PostAsync("/no-such-page", new() { Form = form });
        var program = await page.Context.APIRequest.PostAsync("/api/v1/no-such", new() { DataObject = new { a = 1 } });

        Assert.Equal((404, true), (posted.Status, (await posted.TextAsync()).Contains("nothing at this address", StringComparison.Ordinal)));
        Assert.Equal((404, "application/problem+json"), (program.Status, program.Headers["content-type"].Split(';')[0]));
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
