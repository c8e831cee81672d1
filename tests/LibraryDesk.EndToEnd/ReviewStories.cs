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
    public async Task An_opinion_sent_twice_is_taken_once_and_one_from_an_old_page_is_kept_in_sight()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await page.SignInAsync("wren.castell@example.org", Phrase);
        await OpenCaseAsync(page);
        // The other window as it was before: what it sends comes too late.
        var (old, older) = (await page.Context.NewPageAsync(), await page.Context.NewPageAsync());
        await old.GotoAsync(page.Url);
        await older.GotoAsync(page.Url);

        await page.Keyboard.PressAsync("5");
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "Your opinion is sealed" })).ToBeFocusedAsync();

        await old.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum pubescens") }).CheckAsync();
        await SealAsync(old);
        await Expect(old.GetByRole(AriaRole.Status).Filter(new() { HasText = "Your opinion is sealed" })).ToBeVisibleAsync();

        await older.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum baccatum") }).CheckAsync();
        await older.GetByLabel("What settles it for you?").FillAsync("Spots, and no hairs.");
        await SealAsync(older);
        await Expect(older.GetByRole(AriaRole.Alert)).ToContainTextAsync("You had sealed Capsicum pubescens");
        await Expect(older.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum baccatum") })).ToBeCheckedAsync();
        await Expect(older.GetByLabel("What settled it, or changed it?")).ToHaveValueAsync("Spots, and no hairs.");
    }

    [Fact]
    public async Task A_form_whose_page_is_out_of_date_shows_what_was_written_and_the_way_back()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone);
        await page.SignInAsync("wren.castell@example.org", Phrase);
        await OpenCaseAsync(page);
        await page.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum baccatum") }).CheckAsync();
        await page.GetByLabel("What settles it for you?").FillAsync("Spots, and no hairs.");
        // As after signing in as somebody else in another window.
        await page.Locator("#opinion [name=__RequestVerificationToken]").EvaluateAsync("field => { field.value = 'of somebody else'; }");
        await SealAsync(page);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "This page was out of date" })).ToBeFocusedAsync();
        await Expect(page.GetByText("Spots, and no hairs.")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Show the page as it stands now" }).ClickAsync();
        await Expect(page.GetByLabel("What settles it for you?")).ToHaveValueAsync("Spots, and no hairs.");
        await Expect(page.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum baccatum") })).ToBeCheckedAsync();
    }

    [Fact]
    public async Task What_is_chosen_and_written_stays_when_another_photo_or_a_score_is_opened()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await page.SignInAsync("wren.castell@example.org", Phrase);
        await page.GotoAsync("/queue/28");
        var (choice, words) = (page.GetByRole(AriaRole.Radio, new() { NameRegex = new Regex("Capsicum baccatum") }), page.GetByLabel("What settles it for you?"));
        await choice.CheckAsync();
        await words.FillAsync("Spots, and no hairs.");

        await page.GetByRole(AriaRole.Link, new() { Name = "Next photo" }).ClickAsync();
        // The address changes before the page does.
        await Expect(page.Locator("[aria-current=true] img[alt^='Photo 2']")).ToHaveCountAsync(1);
        await Expect(words).ToHaveValueAsync("Spots, and no hairs.");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Score ") }).First.ClickAsync();
        await Expect(page.Locator("#score")).ToBeFocusedAsync();
        await Expect(choice).ToBeCheckedAsync();
        await page.Locator("#score .state").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep my score" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "Your score is kept." })).ToBeFocusedAsync();
        await Expect(page.Locator("[aria-current=true] img[alt^='Photo 2']")).ToHaveCountAsync(1);
        await Expect(words).ToHaveValueAsync("Spots, and no hairs.");
        await Expect(choice).ToBeCheckedAsync();
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
