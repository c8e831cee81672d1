using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// The camera reads a label, on the scan page and at the counter. The pictures are the browser's own test pattern, so the reading of the
/// square itself is stood in for; opening the camera, its frames and what becomes of a code are real.
/// </summary>
public class CameraStory(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Fact]
    public async Task A_label_held_to_the_camera_opens_its_page_and_is_lent_at_the_counter()
    {
        await using var server = await DeskServer.StartAsync("sqlite");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone);
        await page.SetUpAsync(server, "Hester Lorne", "hester@example.org");
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await member.SignUpAsync("Maren Oduya", "maren@example.org");
        var packet = await page.PutUpPacketsAsync(await page.TakeSeedInAsync("Odile Brandt", "Ferryman's Lamp", "capsicum-baccatum"), 1);

        await page.GotoAsync("/scan");
        if (!await page.EvaluateAsync<bool>("'BarcodeDetector' in window")) await Expect(page.Locator("[data-scan-start]")).ToBeHiddenAsync();
        await page.Context.GrantPermissionsAsync(["camera"]);
        await page.AddInitScriptAsync(
            $$"""
            let frames = 0;
            window.BarcodeDetector = class {
              async detect(video) { return video.videoWidth > 0 && ++frames > 5 ? [{ rawValue: "{{server.Address}}/p/{{packet}}" }] : []; }
            };
            """);
        await page.GotoAsync("/scan");
        await page.Locator("[data-scan-start]").ClickAsync();
        await page.WaitForURLAsync($"**/p/{packet}");

        await page.GotoAsync("/loans");
        await page.Locator("input[name='Form.Who']").FillAsync("oduya");
        await page.Locator("input[name='Form.Who']").PressAsync("Enter");
        await page.SeesAsync("Lending to Maren Oduya");
        await page.Locator("[data-scan-start]").ClickAsync();
        await page.SeesAsync($"{packet} is lent");
    }
}
