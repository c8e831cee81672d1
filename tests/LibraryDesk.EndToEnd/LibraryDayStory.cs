using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>A librarian says where the library is, and its days begin at midnight there.</summary>
public class LibraryDayStory(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Fact]
    public async Task The_day_at_the_counter_is_the_day_outside_the_window()
    {
        // Friday evening in London, where the demo is; nine on Saturday morning in Auckland, which keeps summer time in November (tz database, 2025).
        await using var server = await DeskServer.StartAsync("sqlite", "--demo", "--DemoNow", "2026-11-20T20:00:00Z");
        await server.SaysAsync("member ");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone, script: false);
        await page.SignInAsDemoAsync(server, "librarian");
        await page.GotoAsync("/lots/new");
        await Expect(page.Locator("input[type=date]").First).ToHaveValueAsync("2026-11-20");

        await page.GotoAsync("/settings");
        await page.Locator("#time-zone").SelectOptionAsync("Pacific/Auckland");
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Save the settings" }).ClickAsync();
        await page.SeesAsync("The settings are saved.");
        await Expect(page.Locator("#time-zone")).ToHaveValueAsync("Pacific/Auckland");
        await page.GotoAsync("/lots/new");
        await Expect(page.Locator("input[type=date]").First).ToHaveValueAsync("2026-11-21");
        await page.GotoAsync("/ledger");
        await page.SeesAsync("21 November 2026, 09:");
        await page.SeesAsync("UTC+13:00");
    }
}
