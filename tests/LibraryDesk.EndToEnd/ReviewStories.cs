using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>A volunteer's twenty minutes with the queue of the demo library.</summary>
public class ReviewStories(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    private const string Phrase = "paper packets in rows";
    private const string OpenCase = "Hairless, spotted and eight-lobed";

    [Theory, OnBoth]
    public async Task A_volunteer_goes_from_the_seal_over_the_review_to_the_next_case(string database)
    {
        await using var server = await DeskServer.StartAsync(database, "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await page.SignInAsync("wren.castell@example.org", Phrase);
        await OpenCaseAsync(page);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Odds by the traits" })).ToHaveCountAsync(0);

        await page.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum pubescens") }).CheckAsync();
        await page.GetByLabel("What settles it for you?").FillAsync("Spots, and no hairs.");
        await page.Locator("#in-twenty").FillAsync("25");
        await SealAsync(page);
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("0 to 20");
        await Expect(page.GetByLabel("What settles it for you?")).ToHaveValueAsync("Spots, and no hairs.");

        await page.Locator("#in-twenty").FillAsync("12");
        await SealAsync(page);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Odds by the traits" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Finish my review" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "Your review is finished" })).ToBeVisibleAsync();

        var here = page.Url;
        await page.Keyboard.PressAsync("n");
        await page.WaitForURLAsync(url => url.Split('?')[0] != here.Split('?')[0]);
    }

    [Fact]
    public async Task Without_script_an_opinion_is_sealed_and_the_odds_open()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone, script: false);
        await page.SignInAsync("wren.castell@example.org", Phrase);
        await OpenCaseAsync(page);
        await page.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Can’t be told") }).CheckAsync();
        await SealAsync(page);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Odds by the traits" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Another_volunteers_list_follows_without_a_reload()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var wren = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await wren.SignInAsync("wren.castell@example.org", Phrase);
        var jory = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await jory.SignInAsync("jory.pell@example.org", Phrase);
        await jory.GotoAsync("/queue");
        var line = jory.Locator("#queue-list li").Filter(new() { HasText = OpenCase });
        await Expect(line).ToContainTextAsync("First opinion");

        await OpenCaseAsync(wren);
        await wren.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum pubescens") }).CheckAsync();
        await SealAsync(wren);
        await Expect(line).ToContainTextAsync("Second opinion", new() { Timeout = 20_000 });
    }

    private static async Task OpenCaseAsync(IPage page)
    {
        await page.GotoAsync("/queue");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex(OpenCase) }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync(OpenCase);
    }

    private static Task SealAsync(IPage page) => page.GetByRole(AriaRole.Button, new() { Name = "Give my opinion, sealed" }).ClickAsync();
}
