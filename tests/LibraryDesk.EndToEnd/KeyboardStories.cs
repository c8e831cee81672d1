using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>The three main stories with the keyboard alone: no click, no focus set from outside.</summary>
public class KeyboardStories(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    private const int MostTabs = 60;
    private const int Slow = 60_000;

    [Fact]
    public async Task A_member_files_a_case()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var page = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await page.SignUpAsync("Maren Oduya", "maren@example.org");
        await page.GotoAsync("/");
        await TabToAsync(page, "a[href='/cases/new']");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/cases/new");
        await TabToAsync(page, "input[name='Form.Title']");
        await page.Keyboard.TypeAsync("Pepper on the sill");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/parts");
        await TabToAsync(page, "input[name='Parts'][value='flowers']");
        await page.Keyboard.PressAsync("Space");
        await NamedAsync(page);
        await TabToAsync(page, "main button[type=submit]");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/photos");
        await TabToAsync(page, ".thumb a[href$='/ask']");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/ask*");
        await TabToAsync(page, "form[data-answer] .states input");
        await page.Keyboard.PressAsync("Space");
        await NamedAsync(page);
        await TabToAsync(page, ".thumb button[type=submit]");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**got=**");
        await TabToAsync(page, ".thumb a[href$='/origin']");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/origin");
        await TabToAsync(page, "button:text('File it')");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(new Regex("/cases/[0-9]+($|\\?)"));
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Pepper on the sill");
    }

    [Fact]
    public async Task A_volunteer_clears_a_plain_case_in_twelve_key_presses_and_asks_for_a_look_with_one()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await page.SignInAsDemoAsync(server, "volunteer");
        await page.GotoAsync("/queue");
        var presses = 0;
        async Task PressAsync(string key)
        {
            presses++;
            await page.Keyboard.PressAsync(key);
        }

        await PressAsync("n");
        await page.WaitForURLAsync(new Regex("/queue/[0-9]+"));
        // A page changed without a reload takes the focus to its heading; nobody types before it is there.
        await Expect(page.Locator("h1")).ToBeFocusedAsync(new() { Timeout = Slow });
        await NamedAsync(page);
        var here = new Uri(page.Url).AbsolutePath;

        await PressAsync("2");
        await PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Odds by the traits" })).ToBeVisibleAsync(new() { Timeout = Slow });
        await PressAsync("2");
        await PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "Your review is finished" })).ToBeVisibleAsync(new() { Timeout = Slow });
        await PressAsync("n");
        await page.WaitForURLAsync(url => new Uri(url).AbsolutePath != here);
        Assert.True(presses <= 12, $"{presses} key presses");

        await Expect(page.Locator("h1")).ToBeFocusedAsync(new() { Timeout = Slow });
        await page.Keyboard.PressAsync("l");
        await Expect(page.Locator("#look-what")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task A_librarian_lends_and_takes_back_at_the_counter()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var page = await browser.OpenAsync(server, DeskBrowser.Laptop);
        await page.SetUpAsync(server, "Hester Lorne", "hester@example.org");
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        var lot = await page.TakeSeedInAsync("Odile Brandt", "Ferryman's Lamp", "capsicum-baccatum");
        var packet = await page.PutUpPacketsAsync(lot, 1);

        await page.GotoAsync("/loans");
        await Expect(page.Locator("#who")).ToBeFocusedAsync();
        await NamedAsync(page);
        await page.Keyboard.TypeAsync("oduya");
        await page.Keyboard.PressAsync("Enter");
        await page.SeesAsync("Lending to Maren Oduya");
        await Expect(page.Locator("#packet")).ToBeFocusedAsync();
        // A hand scanner writes the code and presses Enter.
        await page.Keyboard.TypeAsync(packet.ToLowerInvariant());
        await page.Keyboard.PressAsync("Enter");
        await page.SeesAsync($"{packet} is lent");

        await Expect(page.Locator("#packet")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync(packet);
        await page.Keyboard.PressAsync("Enter");
        await page.SeesAsync($"{packet} is out");
        await TabToAsync(page, "button:text('It came back unopened')");
        await page.Keyboard.PressAsync("Enter");
        await page.SeesAsync($"{packet} is back on the shelf");

        // And the last deed is undone.
        await TabToAsync(page, ".tbl button:text('Undo')");
        await page.Keyboard.PressAsync("Enter");
        await page.SeesAsync($"{packet} is out with Maren Oduya again");
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator("#who")).ToBeFocusedAsync();
    }

    /// <summary>Presses Tab until the focus is there, and checks at every stop that it can be seen (WCAG 2.2, 2.4.7 and 2.4.11).</summary>
    private static async Task TabToAsync(IPage page, string selector)
    {
        var wanted = page.Locator(selector).First;
        await wanted.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        for (var tabs = 0; tabs < MostTabs; tabs++)
        {
            await page.Keyboard.PressAsync("Tab");
            var seen = await page.EvaluateAsync<bool>("(() => { const e = document.activeElement; const frame = e.closest('label') ?? e; const box = frame.getBoundingClientRect(); return e === document.body || (box.width > 0 && box.bottom > 0 && box.top < innerHeight); })()");
            Assert.True(seen, $"The focus went out of sight after {tabs + 1} tabs on {page.Url}");
            if (await wanted.EvaluateAsync<bool>("e => e === document.activeElement")) return;
        }
        Assert.Fail($"{selector} was not reached within {MostTabs} tabs on {page.Url}");
    }

    /// <summary>Everything that can be worked or looked at has a name in the accessibility tree, as Chromium builds it.</summary>
    private static async Task NamedAsync(IPage page)
    {
        var wire = await page.Context.NewCDPSessionAsync(page);
        var tree = await wire.SendAsync("Accessibility.getFullAXTree");
        var nameless = tree!.Value.GetProperty("nodes").EnumerateArray()
            .Where(node => !(node.TryGetProperty("ignored", out var ignored) && ignored.GetBoolean()))
            .Where(node => node.TryGetProperty("role", out var role) && role.GetProperty("value").GetString() is "button" or "link" or "textbox" or "searchbox" or "combobox" or "radio" or "checkbox" or "slider" or "image" or "progressbar")
            .Where(node => !node.TryGetProperty("name", out var name) || string.IsNullOrWhiteSpace(name.GetProperty("value").GetString()))
            .Select(node => node.GetProperty("role").GetProperty("value").GetString());
        Assert.Empty(nameless);
        await wire.DetachAsync();
    }
}
