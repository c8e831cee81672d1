using System.Collections.Concurrent;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// Walks every page that can be reached by links, signed out and in each role, on the demo library: each answers, none is wider than
/// its window, in Spanish too, whose words are longer, and axe-core finds nothing against WCAG 2.2 A and AA (rules tagged so by axe-core
/// itself). axe-core reads a page unless one of its pattern was read at this size and every kind of element on it was seen by then.
/// </summary>
/// <param name="role">Who walks; null for somebody signed out.</param>
public abstract class EveryPage(DeskBrowser browser, string? role) : IClassFixture<DeskBrowser>
{
    // Pages of one pattern look alike: two of each on the phone, where things are tight, one on the laptop.
    private static int MostOfOnePattern(ViewportSize size) => size.Width < 500 ? 2 : 1;

    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
    };

    // What axe-core judges an element by, as far as the page's own style sheet and markup decide it.
    private const string KindsOfElements = """
        () => {
            const name = e => e ? e.localName + [...e.classList].sort().map(c => '.' + c).join('') : '';
            const found = id => document.getElementById(id) ? 'there' : 'missing';
            const told = a => a.name === 'aria-labelledby' || a.name === 'aria-describedby' || a.name === 'aria-controls' ? a.name + '=' + a.value.split(' ').map(found)
                : a.name === 'role' || a.name === 'type' || a.name === 'hidden' || /^aria-(?!label)/.test(a.name) ? a.name + '=' + a.value : a.name;
            const kinds = new Set();
            for (const e of document.querySelectorAll('body *')) {
                if (e.ownerSVGElement) continue;
                const words = [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim());
                kinds.add([name(e.parentElement?.parentElement), name(e.parentElement), name(e), [...e.attributes].map(told).sort(), words, e.labels ? e.labels.length > 0 : ''].join('|'));
            }
            return [...kinds];
        }
        """;

    private static readonly ConcurrentDictionary<string, bool> Known = new();

    [Fact]
    public async Task Is_reachable_fits_its_window_and_is_accessible()
    {
        // PostgreSQL, because there every read truly waits, so that a page is also drawn before its data has come.
        await using var server = await DeskServer.StartAsync("postgres", "--demo");
        var faults = new List<string>();
        // Each size and each theme once: the other two pairings share every rule with these.
        foreach (var (size, scheme) in new[] { (DeskBrowser.Phone, ColorScheme.Light), (DeskBrowser.Laptop, ColorScheme.Dark) })
        {
            var page = await browser.OpenAsync(server, size, scheme);
            if (role is not null) await page.SignInAsDemoAsync(server, role);
            faults.AddRange(await WalkAsync(page, size, MostOfOnePattern(size), $"{role ?? "signed out"} {size.Width} {scheme}"));
            await page.Context.CloseAsync();
        }
        var spanish = await browser.OpenAsync(server, DeskBrowser.Phone, locale: "es-ES");
        if (role is not null) await spanish.SignInAsDemoAsync(server, role);
        faults.AddRange(await WalkAsync(spanish, DeskBrowser.Phone, 1, $"{role ?? "signed out"} in Spanish", read: false));
        if (server.Console.Contains("unhandled exception", StringComparison.Ordinal)) faults.Add(server.Console);
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private static async Task<List<string>> WalkAsync(IPage page, ViewportSize size, int most, string who, bool read = true)
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

            faults.AddRange(await FaultsAsync(page, size, $"{who}: {path}", read && await IsNewAsync(page, size, pattern)));

            foreach (var link in await page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('a[href]')].filter(a => !a.hasAttribute('download') && a.origin === location.origin).map(a => a.pathname + a.search)"))
            {
                if (!link.Contains("sign-out", StringComparison.Ordinal) && queued.Add(link)) waiting.Enqueue(link);
            }
        }
        return faults;
    }

    // Whether axe-core has something to say about this page that it has not said of others at this size.
    private static async Task<bool> IsNewAsync(IPage page, ViewportSize size, string pattern)
    {
        var isNew = Known.TryAdd($"{size.Width} {pattern}", true);
        foreach (var kind in await page.EvaluateAsync<string[]>(KindsOfElements)) isNew |= Known.TryAdd($"{size.Width} {kind}", true);
        return isNew;
    }

    /// <summary>What is wrong with the page in sight: wider than its window, also when that is narrowed, headings, access.</summary>
    /// <param name="read">False where axe-core need not read it.</param>
    internal static async Task<List<string>> FaultsAsync(IPage page, ViewportSize size, string which, bool read = true)
    {
        var faults = new List<string>();
        var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth");
        if (wide > 0) faults.Add($"{which} is {wide} px wider than its window");
        // WCAG 2.2, 1.4.10: 320 px wide, and a laptop zoomed to 200 %, which leaves half of it.
        var narrow = size.Width < 500 ? new ViewportSize { Width = 320, Height = 640 } : new ViewportSize { Width = 640, Height = 400 };
        await page.SetViewportSizeAsync(narrow.Width, narrow.Height);
        wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth");
        if (wide > 0) faults.Add($"{which} is {wide} px wider than {narrow.Width} px");
        await page.SetViewportSizeAsync(size.Width, size.Height);
        if (await page.Locator("h1").CountAsync() != 1) faults.Add($"{which} has not exactly one h1");
        if (!read) return faults;
        // A box that happens to be scrolled under the thumb bar is not out of reach, but axe-core measures the part in sight.
        await page.EvaluateAsync("document.querySelectorAll('.thumb').forEach(bar => bar.style.position = 'static')");
        var axe = await page.RunAxe(Rules);
        faults.AddRange(axe.Violations.SelectMany(v => v.Nodes.Take(2).Select(n => $"{which}: {v.Id}: {n.Html[..Math.Min(160, n.Html.Length)]}")));
        return faults;
    }

    // /cases/214?x=1 and /cases/3 are one pattern, and so are codes with digits in them.
    private static string Pattern(string path) => string.Join('/', path.Split('?')[0].Split('/')
        .Select(part => part.Any(char.IsDigit) || part.Length > 30 ? "*" : part));
}

// A class for each role, so that two walk at a time.

/// <inheritdoc />
public sealed class EveryPageSignedOut(DeskBrowser browser) : EveryPage(browser, null);

/// <inheritdoc />
public sealed class EveryPageOfMembers(DeskBrowser browser) : EveryPage(browser, "member");

/// <inheritdoc />
public sealed class EveryPageOfVolunteers(DeskBrowser browser) : EveryPage(browser, "volunteer");

/// <inheritdoc />
public sealed class EveryPageOfLibrarians(DeskBrowser browser) : EveryPage(browser, "librarian");
