using LibraryDesk.Photos.Drawn;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>What a member and a volunteer do with a case, as in the browser.</summary>
internal static class CaseSteps
{
    /// <summary>Files a plant in flower with ripe fruit, one photo, the answers given and a stake's code; returns the case's number.</summary>
    public static async Task<string> FileCaseAsync(this IPage member, string title, string stake, params (string Trait, string State)[] answers)
    {
        await member.GotoAsync("/cases/new");
        await member.Locator("input[name='Form.Title']").FillAsync(title);
        await member.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await member.WaitForURLAsync("**/parts");
        var number = new Uri(member.Url).Segments[2].TrimEnd('/');
        foreach (var part in new[] { "leaves", "flowers", "ripe-fruit" })
            await member.Locator($"input[name='Parts'][value='{part}']").CheckAsync();
        await member.GetByRole(AriaRole.Button, new() { Name = "Go on to photos" }).ClickAsync();
        await member.WaitForURLAsync("**/photos");
        await member.SendPhotoAsync();
        foreach (var (trait, state) in answers) await member.AnswerAsync(number, trait, state);

        await member.GotoAsync($"/cases/{number}/origin");
        await member.Locator("input[name='Form.Code']").FillAsync(stake);
        await member.GetByRole(AriaRole.Button, new() { Name = "File it" }).ClickAsync();
        await member.WaitForURLAsync(url => new Uri(url).AbsolutePath == $"/cases/{number}");
        return number;
    }

    public static async Task AnswerAsync(this IPage page, string number, string trait, string state)
    {
        await page.GotoAsync($"/cases/{number}/ask?trait={trait}");
        await page.Locator($"input[name='Form.States'][value='{state}']").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Next question" }).ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains($"trait={trait}", StringComparison.Ordinal) || url.Contains("said", StringComparison.Ordinal));
    }

    /// <summary>Seals an opinion; before that no odds are in sight.</summary>
    public static async Task SealOpinionAsync(this IPage volunteer, string number, string taxon)
    {
        await volunteer.GotoAsync($"/queue/{number}");
        await Assertions.Expect(volunteer.Locator(".cands")).ToHaveCountAsync(0);
        await volunteer.Locator($"input[name='Opinion.Taxon'][value='{taxon}']").CheckAsync();
        await volunteer.Locator("[name='Opinion.Note']").FillAsync("Spots at the foot of each petal lobe.");
        await volunteer.GetByRole(AriaRole.Button, new() { Name = "Give my opinion, sealed" }).ClickAsync();
        await volunteer.GetByRole(AriaRole.Button, new() { Name = "Finish my review" }).WaitForAsync();
        await volunteer.Locator(".cands").First.WaitForAsync();
    }

    public static async Task FinishReviewAsync(this IPage volunteer, string number)
    {
        await volunteer.GotoAsync($"/queue/{number}");
        await volunteer.GetByRole(AriaRole.Button, new() { Name = "Finish my review" }).ClickAsync();
        await volunteer.Locator(".note.go[role=status]").First.WaitForAsync();
    }

    /// <summary>A librarian sets the determination down as a name claim for the lot.</summary>
    public static async Task ClaimFromCaseAsync(this IPage librarian, string number)
    {
        await librarian.GotoAsync($"/cases/{number}");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Claim this name for the lot" }).ClickAsync();
        await librarian.GetByText("is a name claim for the lot").First.WaitForAsync();
    }

    private static async Task SendPhotoAsync(this IPage member)
    {
        var file = new FilePayload { Name = "flower.jpg", MimeType = "image/jpeg", Buffer = DrawnPhoto.Draw(new DrawnSubject { Part = DrawnPart.Flower, Corolla = "white", Spots = "green-yellow" }, 7) };
        await member.Locator("input[type=file]").First.SetInputFilesAsync(file);
        await member.Locator("[data-kept]:not(.waits):visible").First.WaitForAsync();
    }
}
