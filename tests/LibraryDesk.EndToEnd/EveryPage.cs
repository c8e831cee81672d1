using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// Walks every page that can be reached by links, signed out and in each role, on the demo library: each answers, none is wider than
/// its window, and axe-core finds nothing against WCAG 2.2 A and AA (rules tagged so by axe-core itself).
/// </summary>
public class EveryPage(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    // Pages of one pattern look alike: two of each on the phone, where things are tight, one on the laptop.
    private static int MostOfOnePattern(ViewportSize size) => size.Width < 500 ? 2 : 1;

    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
    };

    [Theory]
    [InlineData(null)]
    [InlineData("member")]
    [InlineData("volunteer")]
    [InlineData("librarian")]
    public async Task Is_reachable_fits_its_window_and_is_accessible(string? role)
    {
        // PostgreSQL, because there every read truly waits, so that a page is also drawn before its data has come.
        await using var server = await DeskServer.StartAsync("postgres", "--demo");
        var faults = new List<string>();
        // Each size and each theme once: the other two pairings share every rule with these.
        foreach (var (size, scheme) in new[] { (DeskBrowser.Phone, ColorScheme.Light), (DeskBrowser.Laptop, ColorScheme.Dark) })
        {
            var page = await browser.OpenAsync(server, size, scheme);
            if (role is not null) await page.SignInAsDemoAsync(server, role);
            faults.AddRange(await WalkAsync(page, MostOfOnePattern(size), $"{role ?? "signed out"} {size.Width} {scheme}"));
            await page.Context.CloseAsync();
        }
        if (server.Console.Contains("unhandled exception", StringComparison.Ordinal)) faults.Add(server.Console);
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private static async Task<List<string>> WalkAsync(IPage page, int most, string who)
    {
        var faults = new List<string>();
        var seen = new Dictionary<string, int>();
        var waiting = new Queue<string>(["/"]);
        var queued = new HashSet<string> { "/" };
        while (waiting.TryDequeue(out var path))
        {
            var pattern = Pattern(path);
            seen[pattern] = seen.GetValueOrDefault(pattern) + 1;
            if (seen[pattern] > most) continue;

            var answer = await page.GotoAsync(path);
            if (answer is null || answer.Status >= 400)
            {
                faults.Add($"{who}: {path} answered {answer?.Status}");
                continue;
            }
            if (answer.Headers.TryGetValue("content-type", out var type) && !type.StartsWith("text/html", StringComparison.Ordinal)) continue;

            var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth");
            if (wide > 0) faults.Add($"{who}: {path} is {wide} px wider than its window");
            if (await page.Locator("h1").CountAsync() != 1) faults.Add($"{who}: {path} has not exactly one h1");
            // A box that happens to be scrolled under the thumb bar is not out of reach, but axe-core measures the part in sight.
            await page.EvaluateAsync("document.querySelectorAll('.thumb').forEach(bar => bar.style.position = 'static')");
            var axe = await page.RunAxe(Rules);
            faults.AddRange(axe.Violations.SelectMany(v => v.Nodes.Take(2).Select(n => $"{who}: {path}: {v.Id}: {n.Html[..Math.Min(160, n.Html.Length)]}")));

            foreach (var link in await page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('a[href]')].filter(a => !a.hasAttribute('download') && a.origin === location.origin).map(a => a.pathname + a.search)"))
            {
                if (!link.Contains("sign-out", StringComparison.Ordinal) && queued.Add(link)) waiting.Enqueue(link);
            }
        }
        return faults;
    }

    // /cases/214?x=1 and /cases/3 are one pattern, and so are codes with digits in them.
    private static string Pattern(string path) => string.Join('/', path.Split('?')[0].Split('/')
        .Select(part => part.Any(char.IsDigit) || part.Length > 30 ? "*" : part));
}
