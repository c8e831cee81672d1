using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LibraryDesk.EndToEnd;

/// <summary>The lineage picture in the desk's own fonts, as a browser sets them.</summary>
public class LineagePictures(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    private const int MostLots = 12;

    // The lines of one drawing, each as high as its letters: the box a browser gives is that of the whole line.
    private const string Overlaps = """
        [...document.querySelectorAll('.lineage')].filter(svg => svg.checkVisibility()).flatMap(svg => {
          const lines = [...svg.querySelectorAll('.label, .under')].map(text => ({ words: text.textContent, box: text.getBBox() }));
          const meet = (a, b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y + 3 < b.y + b.height - 3 && b.y + 3 < a.y + a.height - 3;
          return lines.flatMap((one, at) => lines.slice(at + 1).filter(other => meet(one.box, other.box)).map(other => `${one.words} / ${other.words}`));
        })
        """;

    // A hair under 44 px is how a browser rounds a circle of 22.
    private const string Low = "[...document.querySelectorAll('.lineage .reach')].filter(reach => reach.checkVisibility()).map(reach => reach.getBoundingClientRect().height).filter(height => height < 43.9).map(height => `${height} px`)";

    [Fact]
    public async Task No_two_labels_of_the_demo_overlap_and_every_node_answers_to_a_finger()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        foreach (var size in (ViewportSize[])[DeskBrowser.Phone, DeskBrowser.Laptop])
        {
            var page = await browser.OpenAsync(server, size);
            await page.SignInAsDemoAsync(server, "librarian");
            await page.GotoAsync("/lots");
            var lots = (await page.EvaluateAsync<string[]>("[...document.querySelectorAll('a[href^=\"/lots/L\"]')].map(a => a.pathname)")).Distinct().Take(MostLots).ToArray();
            Assert.NotEmpty(lots);
            foreach (var lot in lots)
            {
                await page.GotoAsync(lot);
                await page.EvaluateAsync("document.fonts.ready");
                Assert.Equal([], (await page.EvaluateAsync<string[]>(Overlaps)).Select(pair => $"{lot} at {size.Width}: {pair}"));
                Assert.Equal([], (await page.EvaluateAsync<string[]>(Low)).Select(height => $"{lot} at {size.Width}: {height}"));
            }
        }
    }

    [Fact]
    public async Task A_branch_is_folded_away_and_opened_again_without_script()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var page = await browser.OpenAsync(server, DeskBrowser.Phone, script: false);
        await page.GotoAsync("/lots/L24-001");
        await page.GetByText("Fold branches away").ClickAsync();
        await page.Locator("select[name=at]").SelectOptionAsync(new SelectOptionValue { Index = 0 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Centre on it" }).ClickAsync();
        await Expect(page.GetByText("stand out")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Show all alike" }).ClickAsync();
        await Expect(page.GetByText("stand out")).ToHaveCountAsync(0);
    }
}
