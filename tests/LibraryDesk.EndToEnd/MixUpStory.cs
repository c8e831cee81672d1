using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// The day a name proves wrong: plants of several packets are off, the mix-up finder says where it happened, everything from there is called
/// back, holders are told and answer, and the recall is closed.
/// </summary>
public partial class MixUpStory(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Theory, OnBoth]
    public async Task A_wrong_name_is_traced_to_where_it_came_in_and_called_back_from_there(string database)
    {
        await using var server = await DeskServer.StartAsync(database, "--demo");
        await server.TellOnFailureAsync(() => RunAsync(server));
    }

    private async Task RunAsync(DeskServer server)
    {
        var librarian = await browser.OpenAsync(server, DeskBrowser.Laptop);
        var holder = await browser.OpenAsync(server, DeskBrowser.Phone);
        await librarian.SignInAsDemoAsync(server, "librarian");

        // The demo's librarian called it back from the lot; that recall is closed first, to do it all again from the cause.
        var finder = await LotWithOffTypesAsync(librarian) + "/mix-up";
        await librarian.GotoAsync(finder);
        var first = librarian.Locator(".causes > li").First;
        await Assertions.Expect(first).ToContainTextAsync("came in under a wrong name");
        var accession = AccessionCode().Match(await first.InnerTextAsync()).Value;
        await first.GetByRole(AriaRole.Link, new() { Name = "See the recall" }).ClickAsync();
        // The address changes before the page does.
        await librarian.GetByRole(AriaRole.Heading, new() { NameRegex = RecallHeading() }).WaitForAsync();
        var listed = await PacketsAsync(librarian);
        await CloseAsync(librarian);

        await librarian.GotoAsync(finder);
        await first.GetByRole(AriaRole.Link, new() { Name = "Recall from this cause" }).ClickAsync();
        await librarian.SeesAsync($"{accession} ‘Ferryman’s Lamp’");
        Assert.Equal(listed, await PacketsAsync(librarian));
        Assert.Contains(accession, await librarian.Locator("textarea").InputValueAsync(), StringComparison.Ordinal);
        await librarian.GetByRole(AriaRole.Button, new() { NameRegex = RecallButton() }).ClickAsync();
        await librarian.SeesAsync("The recall is open");
        var recall = librarian.Url.Split('?')[0];

        await librarian.Locator("summary", new() { HasTextRegex = LettersSummary() }).ClickAsync();
        await librarian.SeesAsync("What the first letter says");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Send them" }).ClickAsync();
        await librarian.SeesAsync("people are told.");

        await holder.SignInAsync("ada.finch@example.org", "paper packets in rows");
        var hers = await librarian.Locator("tr", new() { HasText = "Ada Finch" }).Locator("a.code").First.InnerTextAsync();
        await holder.GotoAsync($"/p/{hers}");
        await holder.GetByRole(AriaRole.Button, new() { Name = "It is growing" }).ClickAsync();
        await holder.SeesAsync("You answered:");

        await librarian.GotoAsync(recall);
        await Assertions.Expect(librarian.Locator("dl.kv").First).ToContainTextAsync("1 of");
        await CloseAsync(librarian);
        await CheckInAsync(librarian, hers);
        var (code, output) = await server.DeskAsync("verify");
        Assert.True(code == 0, output);
    }

    /// <summary>Finds the lot by its name spelled wrongly, as somebody in a hurry would.</summary>
    private static async Task<string> LotWithOffTypesAsync(IPage librarian)
    {
        await librarian.GotoAsync("/seeds?q=feryman");
        foreach (var lot in await librarian.EvaluateAsync<string[]>("[...document.querySelectorAll('a[data-hit][href^=\"/lots/L\"]')].map(a => a.pathname)"))
        {
            await librarian.GotoAsync(lot);
            if (await librarian.GetByText("plants of this seed’s packets are off").CountAsync() > 0) return lot;
        }
        throw new InvalidOperationException("No lot of that name has plants that are off.");
    }

    private static async Task<IReadOnlyList<string>> PacketsAsync(IPage page)
    {
        await page.Locator("table .code").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        return [.. (await page.EvaluateAsync<string[]>("[...document.querySelectorAll('main table th .code, main table th a.code')].map(code => code.textContent)")).Distinct().Order(StringComparer.Ordinal)];
    }

    /// <summary>The called-back packets come home in a box; here a box of one, and a slip that is put right without starting over.</summary>
    private static async Task CheckInAsync(IPage librarian, string packet)
    {
        await librarian.GotoAsync("/returns/box");
        await librarian.Locator("#codes").FillAsync("rubbish");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Look at them" }).ClickAsync();
        await librarian.SeesAsync("Nothing was written");
        await librarian.Locator("#codes").FillAsync($"{packet}\nrubbish");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Look at them" }).ClickAsync();
        await librarian.SeesAsync("1 of 2 are ready.");
        await librarian.Locator("#ending-0").SelectOptionAsync("Failed");
        await librarian.Locator("#codes").FillAsync(packet);
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Look at them again" }).ClickAsync();
        await librarian.SeesAsync("1 of 1 are ready.");
        Assert.Equal("Failed", await librarian.Locator("#ending-0").InputValueAsync());
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Check in 1 packet" }).ClickAsync();
        await librarian.SeesAsync("1 packet is checked in");
    }

    private static async Task CloseAsync(IPage librarian)
    {
        await librarian.Locator("summary", new() { HasText = "Close the recall" }).ClickAsync();
        await librarian.GetByLabel("Why can it be closed?").FillAsync("All packets accounted for.");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Close it" }).ClickAsync();
        // Not everybody answered, so it is asked about once.
        await librarian.GetByLabel("Yes, close it").CheckAsync();
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Close it" }).ClickAsync();
        await librarian.SeesAsync("The recall is closed.");
    }

    [GeneratedRegex("A[0-9]{2}-[0-9]{3}")]
    private static partial Regex AccessionCode();

    [GeneratedRegex("^Recall of ")]
    private static partial Regex RecallHeading();

    [GeneratedRegex("^Recall [0-9]+ packets")]
    private static partial Regex RecallButton();

    [GeneratedRegex("^Tell [0-9]+ holders")]
    private static partial Regex LettersSummary();
}
