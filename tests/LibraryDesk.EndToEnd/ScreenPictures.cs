using Microsoft.Playwright;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// The screens look as they did: on a phone and a laptop, light and dark, on the demo library on one day, against the small pictures kept in
/// <c>Pictures</c>. After a change that was meant, run this with LIBRARYDESK_KEEP_PICTURES=1, look at what it keeps, and commit it.
/// </summary>
public sealed class ScreenPictures(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    private const int MostHeight = 2400;

    private static readonly (string? Role, string[] Screens)[] All =
    [
        (null, ["/", "/account/sign-in", "/account/sign-up", "/account/forgot", "/cases/new", "/guides", "/guides/capsicum", "/guides/capsicum/capsicum-annuum", "/help", "/record"]),
        ("member", ["/", "/cases", "/cases/28", "/loans", "/shelf", "/notices", "/account", "/account/notices", "/p/Q26-0019-C", "/search?q=lamp", "/scan"]),
        ("volunteer", ["/", "/queue", "/queue/33", "/queue/28", "/varieties"]),
        ("librarian", ["/", "/lots", "/lots/L24-009", "/lots/L25-006", "/lots/L24-009/mix-up", "/lots/new", "/lots/pack", "/returns/box", "/recalls", "/recalls/new", "/loans", "/labels",
            "/due", "/rates", "/seeds", "/donors", "/people", "/reviewers", "/settings", "/guides/capsicum/edit"]),
    ];

    private static string Folder => Path.Combine(Repository.Root, "tests", "LibraryDesk.EndToEnd", "Pictures");

    [Fact]
    public async Task Look_as_they_did()
    {
        await using var server = await DeskServer.StartAsync("sqlite", "--demo", "--DemoNow", "2026-11-20T09:00:00Z");
        await server.SaysAsync("member ");
        var keep = Environment.GetEnvironmentVariable("LIBRARYDESK_KEEP_PICTURES") == "1";
        var odd = Directory.CreateTempSubdirectory("desk-pictures").FullName;
        var faults = new List<string>();
        foreach (var (role, screens) in All)
        {
            foreach (var (size, scheme) in new[] { (DeskBrowser.Phone, ColorScheme.Light), (DeskBrowser.Phone, ColorScheme.Dark), (DeskBrowser.Laptop, ColorScheme.Light), (DeskBrowser.Laptop, ColorScheme.Dark) })
            {
                var page = await browser.OpenAsync(server, size, scheme, script: false);
                if (role is not null) await page.SignInAsDemoAsync(server, role);
                foreach (var screen in screens)
                {
                    var answer = await page.GotoAsync(screen);
                    if (answer is not { Ok: true })
                    {
                        faults.Add($"{role ?? "signed out"}: {screen} answered {answer?.Status}");
                        continue;
                    }
                    var name = $"{role ?? "signed-out"}{Name(screen)}-{size.Width}-{(scheme == ColorScheme.Dark ? "dark" : "light")}.png";
                    using var now = SmallPicture.Of(await page.ScreenshotAsync(new() { FullPage = true }), MostHeight);
                    if (Judge(Path.Combine(Folder, name), now, keep) is not { } fault) continue;
                    await page.ScreenshotAsync(new() { FullPage = true, Path = Path.Combine(odd, name) });
                    faults.Add($"{name}: {fault}");
                }
                await page.Context.CloseAsync();
            }
        }
        if (faults.Count == 0) Directory.Delete(odd, recursive: true);
        Assert.True(faults.Count == 0, $"{string.Join('\n', faults)}\nThe screens as they are now: {odd}. If that is meant, see the comment of this test.");
    }

    private static string? Judge(string kept, Image<L8> now, bool keep)
    {
        if (keep)
        {
            now.SaveAsPng(kept);
            return null;
        }
        if (!File.Exists(kept)) return "no picture of it is kept";
        using var was = Image.Load<L8>(kept);
        return SmallPicture.Difference(was, now);
    }

    private static string Name(string screen) => screen == "/" ? "-home" : new string([.. screen.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]);
}
