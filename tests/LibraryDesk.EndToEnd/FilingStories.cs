using LibraryDesk.Photos.Drawn;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>Filing in a garden: the signal goes in the middle, a tab is closed, and nothing is lost.</summary>
public class FilingStories(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Fact]
    public async Task Answers_and_photos_outlive_a_lost_connection_and_a_closed_tab()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        await member.GotoAsync("/cases/new");
        var number = await BeginAsync(member);

        // A photo chosen without a signal goes up when it is back.
        await member.Context.SetOfflineAsync(true);
        await member.Locator("input[type=file]").First.SetInputFilesAsync(new FilePayload { Name = "f.jpg", MimeType = "image/jpeg", Buffer = DrawnPhoto.Draw(new DrawnSubject { Part = DrawnPart.Flower, Corolla = "white" }, 3) });
        await Expect(member.Locator("[data-kept]:visible")).ToHaveTextAsync("Waits to be sent");
        await Expect(member.Locator("[data-photo-word]")).ToContainTextAsync("sent when the connection is back");
        await member.GetByRole(AriaRole.Link, new() { Name = "Go on to questions" }).ClickAsync();
        await Expect(member.Locator("#offline-bar")).ToContainTextAsync("can’t be opened now");
        Assert.EndsWith("/photos", member.Url, StringComparison.Ordinal);
        await member.Context.SetOfflineAsync(false);
        await Expect(member.Locator("[data-kept]:visible")).ToHaveTextAsync("Kept");

        // An answer sent without a signal waits on the device, also when the page is closed.
        await member.GotoAsync($"/cases/{number}/ask?trait=corolla_spots");
        await member.Context.SetOfflineAsync(true);
        await member.Locator("input[name='Form.States'][value='green-yellow']").CheckAsync();
        await member.GetByRole(AriaRole.Button, new() { Name = "Next question" }).ClickAsync();
        await Expect(member.Locator("[data-answer-word]")).ToContainTextAsync("kept on this device");
        var context = member.Context;
        await member.CloseAsync();
        await context.SetOfflineAsync(false);
        var again = await context.NewPageAsync();
        await again.GotoAsync($"/cases/{number}/ask?trait=anther_colour");
        await WaitUntilGoneAsync(again, "corolla_spots");
        await again.GotoAsync($"/cases/{number}/ask?trait=corolla_spots");
        await Expect(again.Locator("input[name='Form.States'][value='green-yellow']")).ToBeCheckedAsync();

        // What was chosen and not sent is put back in a new tab.
        await again.GotoAsync($"/cases/{number}/ask?trait=anther_colour");
        await again.Locator("input[name='Form.States'][value='yellow']").CheckAsync();
        await again.CloseAsync();
        var third = await context.NewPageAsync();
        await third.GotoAsync($"/cases/{number}/ask?trait=anther_colour");
        await Expect(third.Locator("input[name='Form.States'][value='yellow']")).ToBeCheckedAsync();
        await Expect(third.Locator("[data-answer-word]")).ToContainTextAsync("not sent yet");
        // Kept at last, nothing of it stays on the device.
        await third.GetByRole(AriaRole.Button, new() { Name = "Next question" }).ClickAsync();
        await third.WaitForURLAsync("**got=anther_colour**");
        await WaitUntilGoneAsync(third, "anther_colour");
    }

    [Fact]
    public async Task Back_leads_to_the_question_before_also_after_a_refused_answer_and_a_note_is_kept_as_it_is_typed()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        await member.GotoAsync("/cases/new");
        await member.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await Expect(member.Locator(".errsum")).ToBeVisibleAsync();
        var number = await BeginAsync(member);

        await member.GotoAsync($"/cases/{number}/ask");
        var first = await member.Locator("h1").InnerTextAsync();
        await member.GetByRole(AriaRole.Button, new() { Name = "Next question" }).ClickAsync();
        await Expect(member.Locator(".errsum")).ToBeVisibleAsync();
        await member.Locator("input[name='Form.States']").First.CheckAsync();
        await member.GetByRole(AriaRole.Button, new() { Name = "Next question" }).ClickAsync();
        await member.WaitForURLAsync("**got=**");
        Assert.NotEqual(first, await member.Locator("h1").InnerTextAsync());
        await member.EvaluateAsync("history.back()");
        await Expect(member.Locator("h1")).ToHaveTextAsync(first);
        await Expect(member.Locator("input[name='Form.States']").First).ToBeCheckedAsync();

        await member.GotoAsync($"/cases/{number}/origin");
        await member.Locator("textarea[name='Form.Note']").FillAsync("from the swap table");
        await member.GotoAsync($"/cases/{number}");
        await member.GotoAsync($"/cases/{number}/origin");
        await Expect(member.Locator("textarea[name='Form.Note']")).ToHaveValueAsync("from the swap table");
        await Expect(member.Locator("[data-draft-word]")).ToBeVisibleAsync();
    }

    // The content policy forbids Playwright's own waiting on a script.
    [Fact]
    public async Task The_first_step_can_be_gone_back_to_and_its_name_and_crop_changed()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        await member.GotoAsync("/cases/new");
        var number = await BeginAsync(member);

        await member.GetByRole(AriaRole.Link, new() { Name = "Back one step" }).ClickAsync();
        // The address changes before the page does, and the page before has a link of the same name.
        await member.Locator("input[name='Parts']").First.WaitForAsync();
        await member.GetByRole(AriaRole.Link, new() { Name = "Back one step" }).ClickAsync();
        await member.WaitForURLAsync("**/name");
        await member.GetByLabel("Which crop is it").SelectOptionAsync("phaseolus");
        await member.GetByLabel("What do you call it?").FillAsync("Bean behind the shed");
        await member.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
        await member.Locator("input[name='Parts']").First.WaitForAsync();
        await Expect(member.Locator("input[name='Parts']:checked")).ToHaveCountAsync(0);
        await member.GotoAsync($"/cases/{number}");
        await Expect(member.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Bean behind the shed");
    }

    /// <summary>From the form of a new case to its photos; gives its number.</summary>
    private static async Task<string> BeginAsync(IPage member)
    {
        await member.Locator("input[name='Form.Title']").FillAsync("Pepper behind the shed");
        await member.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await member.WaitForURLAsync("**/parts");
        var number = new Uri(member.Url).Segments[2].TrimEnd('/');
        await member.Locator("input[name='Parts'][value='flowers']").CheckAsync();
        await member.GetByRole(AriaRole.Button, new() { Name = "Go on to photos" }).ClickAsync();
        await member.WaitForURLAsync("**/photos");
        return number;
    }

    private static async Task WaitUntilGoneAsync(IPage page, string trait)
    {
        for (var tries = 0; tries < 120; tries++)
        {
            if (!(await page.EvaluateAsync<string?>("localStorage.getItem('desk-answers')") ?? "").Contains(trait, StringComparison.Ordinal)) return;
            await page.WaitForTimeoutAsync(250);
        }
        Assert.Fail($"The answer to {trait} still waits on the device.");
    }
}
