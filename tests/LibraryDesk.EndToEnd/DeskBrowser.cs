using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>One headless Chromium for the tests of a class.</summary>
public sealed class DeskBrowser : IAsyncLifetime
{
    private const float Patience = 60_000;

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>A phone held upright.</summary>
    public static ViewportSize Phone { get; } = new() { Width = 390, Height = 844 };

    /// <summary>A small laptop.</summary>
    public static ViewportSize Laptop { get; } = new() { Width = 1280, Height = 800 };

    /// <inheritdoc />
    public async Task InitializeAsync()
    {
        // Two cores run the server, the browser, the database and the tests.
        Assertions.SetDefaultExpectTimeout(Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Environment.GetEnvironmentVariable("LIBRARYDESK_TEST_CHROMIUM") ?? "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"],
        });
    }

    /// <summary>A browser window of somebody's own: no cookie is shared with another.</summary>
    public async Task<IPage> OpenAsync(DeskServer server, ViewportSize size, ColorScheme scheme = ColorScheme.Light, bool script = true, string? locale = null)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            BaseURL = server.Address,
            ViewportSize = size,
            ColorScheme = scheme,
            JavaScriptEnabled = script,
            Locale = locale,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(Patience);
        return await context.NewPageAsync();
    }

    /// <summary>A phone that was never here before: nothing cached, at most signed in.</summary>
    /// <param name="cookies">Cookies of another window, as it stored its state; null for a stranger.</param>
    public async Task<IBrowserContext> OpenColdAsync(DeskServer server, string? cookies) => await _browser!.NewContextAsync(new()
    {
        BaseURL = server.Address,
        ViewportSize = Phone,
        IsMobile = true,
        HasTouch = true,
        DeviceScaleFactor = 2,
        StorageState = cookies,
    });

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}
