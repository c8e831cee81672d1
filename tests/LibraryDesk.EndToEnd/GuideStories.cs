using LibraryDesk.Identification.Guides;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>What a librarian does with a crop guide, without script too: the pages are posted forms.</summary>
public sealed class GuideStories(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    private const string Of = "capsicum-annuum/var-annuum";
    private const string Trait = "corolla_spots";

    [Theory]
    [InlineData("sqlite", true)]
    [InlineData("postgres", false)]
    public async Task A_librarian_edits_a_figure_sees_before_and_after_and_publishes_and_the_old_case_keeps_its_version(string database, bool script)
    {
        await using var server = await DeskServer.StartAsync(database);
        await server.TellOnFailureAsync(() => StoryAsync(server, script));
    }

    [Theory]
    [InlineData("sqlite", false)]
    [InlineData("postgres", true)]
    public async Task A_librarian_adds_a_stage_and_a_part_says_how_far_answers_are_trusted_and_undoes_it(string database, bool script)
    {
        await using var server = await DeskServer.StartAsync(database);
        await server.TellOnFailureAsync(() => SeasonAsync(server, script));
    }

    private async Task SeasonAsync(DeskServer server, bool script)
    {
        var page = await browser.OpenAsync(server, DeskBrowser.Phone, script: script);
        await page.SetUpAsync(server, "Hester Lorne", "hester.lorne@example.org");
        await page.GotoAsync("/guides/capsicum/edit");
        await Press(page, "Begin a draft");

        await OpenAsync(page, script, "stage");
        await Press(page, "Save in the draft");
        await Expect(page.Locator(".errsum")).ToBeVisibleAsync();
        await page.GetByLabel("Short name").FillAsync("sprouting");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Sprouting");
        await page.GetByLabel("Comes after").SelectOptionAsync("");
        await Press(page, "Save in the draft");
        await page.SeesAsync("Stage “Sprouting”");

        await OpenAsync(page, script, "part");
        await page.GetByLabel("Short name").FillAsync("seed-leaves");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Seed leaves");
        await page.GetByLabel("Comes at the stage").SelectOptionAsync("sprouting");
        await Press(page, "Save in the draft");
        await page.SeesAsync("Plant part “Seed leaves”");

        // A stage that a part still names is gone: the validator leads to the part.
        await OpenAsync(page, script, "stage?id=sprouting");
        await page.GetByText("Take this stage out").ClickAsync();
        await Press(page, "Take it out");
        await page.SeesAsync("1 fault");
        await Expect(page.Locator("#faults a")).ToHaveAttributeAsync("href", "/guides/capsicum/edit/part?id=seed-leaves");
        await Press(page, "Undo the last change");
        await page.SeesAsync("no fault");

        await OpenAsync(page, script, $"trait?id={Trait}");
        await page.GetByText("How often answers are right").ClickAsync();
        await page.GetByLabel("When seen clearly").FillAsync("97");
        await page.GetByLabel("When fairly clear").FillAsync("85");
        await page.GetByLabel("When faint").FillAsync("much");
        await Press(page, "Save in the draft");
        await Expect(page.GetByLabel("When faint")).ToHaveValueAsync("much");
        await page.GetByLabel("When faint").FillAsync("60");
        await Press(page, "Save in the draft");
        await OpenAsync(page, script, "whole");
        await page.GetByLabel("How far a form leans on its species").FillAsync("12");
        await Press(page, "Save in the draft");
        await page.SeesAsync("Saved in the draft");

        await OpenAsync(page, script, "../diff?to=draft");
        await page.SeesAsync("0.97, 0.85, 0.6");
        await page.SeesAsync("0.12");
        await page.SeesAsync("Seed leaves");
    }

    private static async Task OpenAsync(IPage page, bool script, string form)
    {
        await page.GotoAsync("/guides/capsicum/edit/" + form);
        // The walk over every page does not come here: there is no draft until somebody begins one. axe-core is a script itself.
        if (script) Assert.Empty(await EveryPage.FaultsAsync(page, DeskBrowser.Phone, form));
    }

    private async Task StoryAsync(DeskServer server, bool script)
    {
        var shipped = BuiltInGuides.Open("capsicum")!.Guide!.Version;
        var page = await browser.OpenAsync(server, DeskBrowser.Phone, script: script);
        await page.SetUpAsync(server, "Hester Lorne", "hester.lorne@example.org");
        var old = await BeginCaseAsync(page, "Before the change");

        await page.GotoAsync("/guides/capsicum/edit");
        await Press(page, "Begin a draft");
        await page.GotoAsync($"/guides/capsicum/edit/cells?of={Uri.EscapeDataString(Of)}&trait={Trait}");
        await page.GetByRole(AriaRole.Link, new() { Name = "No spots at all" }).First.ClickAsync();
        // A slip is refused at its field, and what was typed stays.
        await page.Locator("input[name='Form.Word'][value='counted']").CheckAsync();
        await page.GetByLabel("Counted share").FillAsync("many");
        await Press(page, "Save in the draft");
        await Expect(page.Locator(".errsum")).ToBeVisibleAsync();
        await Expect(page.GetByLabel("Counted share")).ToHaveValueAsync("many");
        await page.GetByLabel("Counted share").FillAsync("97.5");
        await page.GetByLabel("Plants counted").FillAsync("40");
        await Press(page, "Save in the draft");
        await page.SeesAsync("97.5 % of 40");

        await page.GotoAsync("/guides/capsicum/diff?to=draft");
        await page.SeesAsync("0.975 of 40");
        await page.GotoAsync("/guides/capsicum/rerun");
        await Press(page, "Re-run all determined cases");
        await page.SeesAsync("No case of this crop is determined yet");
        await page.GetByLabel("What changed, and why").FillAsync("Forty plants of our own beds were counted.");
        await Press(page, "Publish the new version");
        await page.SeesAsync($"Version {shipped}.1 is published");

        var young = await BeginCaseAsync(page, "After the change");
        Assert.Equal(shipped, await VersionAsync(page, old));
        Assert.Equal(shipped + ".1", await VersionAsync(page, young));
    }

    private static async Task<string> BeginCaseAsync(IPage page, string title)
    {
        await page.GotoAsync("/cases/new");
        await page.Locator("input[name='Form.Title']").FillAsync(title);
        await Press(page, "Begin");
        await page.WaitForURLAsync("**/parts");
        return new Uri(page.Url).Segments[2].TrimEnd('/');
    }

    /// <summary>The guide version that the case's page names under its exact figures.</summary>
    private static async Task<string> VersionAsync(IPage page, string number)
    {
        await page.GotoAsync($"/cases/{number}");
        var text = await page.Locator("details p.fine.num").First.TextContentAsync() ?? "";
        return text[(text.LastIndexOf("version ", StringComparison.Ordinal) + "version ".Length)..].Trim().TrimEnd('.');
    }

    private static Task Press(IPage page, string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
}
