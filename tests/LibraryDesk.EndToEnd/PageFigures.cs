using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// What a first visit costs on a phone with a slow connection, in Chromium by its own debugging protocol: 390 x 844, 150 ms round trip,
/// 1.6 Mbit/s down, 750 kbit/s up, processor slowed four times (the usual "slow 4G" of audits, from memory). Times are printed, never
/// asserted; bytes and layout shift are.
/// </summary>
public class PageFigures(DeskBrowser browser, ITestOutputHelper output) : IClassFixture<DeskBrowser>
{
    private const int MostBytes = 250_000;
    private const double MostShift = 0.05;

    private const string Watch = """
        window.figures = { lcp: 0, cls: 0, inp: 0 };
        new PerformanceObserver(list => { for (const e of list.getEntries()) figures.lcp = e.startTime; }).observe({ type: "largest-contentful-paint", buffered: true });
        new PerformanceObserver(list => { for (const e of list.getEntries()) if (!e.hadRecentInput) figures.cls += e.value; }).observe({ type: "layout-shift", buffered: true });
        new PerformanceObserver(list => { for (const e of list.getEntries()) if (e.interactionId) figures.inp = Math.max(figures.inp, e.duration); }).observe({ type: "event", durationThreshold: 16, buffered: true });
        """;

    [Fact]
    public async Task A_first_visit_is_small_and_stands_still()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo");
        var guide = await browser.OpenAsync(server, DeskBrowser.Phone);
        await guide.SignInAsDemoAsync(server, "member");
        await guide.GotoAsync("/cases/new");
        await guide.Locator("input[name='Form.Title']").FillAsync("Pepper by the gate");
        await guide.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await guide.WaitForURLAsync("**/parts");
        var draft = new Uri(guide.Url).Segments[2].TrimEnd('/');
        await guide.Locator("input[name='Parts'][value='flowers']").CheckAsync();
        await guide.GetByRole(AriaRole.Button, new() { Name = "Go on to photos" }).ClickAsync();
        await guide.WaitForURLAsync("**/photos");
        await guide.GotoAsync("/cases");
        var known = await guide.EvaluateAsync<string>("[...document.querySelectorAll('main a[href^=\"/cases/\"]')].map(a => a.getAttribute('href')).filter(h => /^\\/cases\\/\\d+$/.test(h)).at(-1)");
        var cookies = await guide.Context.StorageStateAsync();

        output.WriteLine("| page | LCP ms | CLS | INP ms | bytes over the wire | requests |");
        output.WriteLine("|---|---|---|---|---|---|");
        var faults = new List<string>();
        faults.AddRange(await MeasureAsync(server, "home, signed out", "/", null, "details.menu-phone > summary"));
        faults.AddRange(await MeasureAsync(server, "filing, one question", $"/cases/{draft}/ask?trait=corolla_spots", cookies, ".state >> nth=1"));
        faults.AddRange(await MeasureAsync(server, "case", known, cookies, "details.menu-phone > summary"));
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private async Task<List<string>> MeasureAsync(DeskServer server, string name, string path, string? cookies, string tap)
    {
        // Warm on the server, cold in the browser: what the next reader meets.
        await using (var warm = await browser.OpenColdAsync(server, cookies)) await (await warm.NewPageAsync()).GotoAsync(path);
        await using var context = await browser.OpenColdAsync(server, cookies);
        var page = await context.NewPageAsync();
        var wire = await context.NewCDPSessionAsync(page);
        double bytes = 0;
        var requests = 0;
        await wire.SendAsync("Network.enable");
        await wire.SendAsync("Network.emulateNetworkConditions", new() { ["offline"] = false, ["latency"] = 150, ["downloadThroughput"] = 200_000, ["uploadThroughput"] = 93_750 });
        await wire.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });
        wire.Event("Network.loadingFinished").OnEvent += (_, e) =>
        {
            bytes += e!.Value.GetProperty("encodedDataLength").GetDouble();
            requests++;
        };
        await page.AddInitScriptAsync(Watch);
        await page.GotoAsync(path, new() { WaitUntil = WaitUntilState.Load });
        await page.WaitForTimeoutAsync(3000);
        await page.Locator(tap).First.ClickAsync();
        await page.WaitForTimeoutAsync(1000);

        var figures = await page.EvaluateAsync<JsonElement>("figures");
        var shift = figures.GetProperty("cls").GetDouble();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {figures.GetProperty("lcp").GetDouble():F0} | {shift:F3} | {figures.GetProperty("inp").GetDouble():F0} | {bytes:F0} | {requests} |"));
        var faults = new List<string>();
        if (bytes > MostBytes) faults.Add($"{name}: {bytes:F0} bytes over the wire, more than {MostBytes}");
        if (shift > MostShift) faults.Add($"{name}: layout shift {shift:F3}, more than {MostShift}");
        return faults;
    }
}
