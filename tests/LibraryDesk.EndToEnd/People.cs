using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>Signing in and up, as a person does it in the browser.</summary>
internal static partial class People
{
    public const string Password = "three wet boots";

    /// <summary>The first librarian, by the code that the server printed.</summary>
    public static async Task SetUpAsync(this IPage page, DeskServer server, string name, string email)
    {
        var code = SetUpCode().Match(server.Console).Value;
        await page.GotoAsync("/account/set-up");
        await page.GetByLabel("Code from the console").FillAsync(code);
        await page.GetByLabel("Name of the library").FillAsync("Quillbrook Seed Library");
        await page.GetByLabel("Your name").FillAsync(name);
        await page.GetByLabel("Your e-mail").FillAsync(email);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the library" }).ClickAsync();
        await page.WaitForURLAsync("**/settings");
    }

    /// <summary>Waits until the page says so.</summary>
    public static Task SeesAsync(this IPage page, string text) =>
        page.Locator("main").GetByText(text).First.WaitForAsync(new() { State = WaitForSelectorState.Attached });

    public static async Task SignUpAsync(this IPage page, string name, string email)
    {
        await page.GotoAsync("/account/sign-up");
        await page.GetByLabel("What should we call you?").FillAsync(name);
        await page.GetByLabel("E-mail").FillAsync(email);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make my account" }).ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("/account/", StringComparison.Ordinal));
    }

    public static async Task SignInAsync(this IPage page, string email, string password = Password)
    {
        await page.GotoAsync("/account/sign-in");
        await page.Locator("#email").FillAsync(email);
        await page.Locator("#password").FillAsync(password);
        await page.Locator("#password").PressAsync("Enter");
        await page.WaitForURLAsync(url => !url.Contains("/account/", StringComparison.Ordinal));
    }

    /// <summary>A librarian invites; the invited makes an account from the link, in a window of their own.</summary>
    public static async Task InviteAsync(this IPage librarian, IPage invited, string name, string email, string role)
    {
        await librarian.GotoAsync("/people");
        await librarian.Locator("#email").FillAsync(email);
        await librarian.Locator("#as").SelectOptionAsync(role);
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Send the invitation" }).ClickAsync();
        var link = await librarian.Locator(".note code").InnerTextAsync();
        await invited.GotoAsync(new Uri(link).PathAndQuery);
        await invited.GetByLabel("What should we call you?").FillAsync(name);
        await invited.GetByLabel("Password").FillAsync(Password);
        await invited.GetByRole(AriaRole.Button, new() { Name = "Make my account" }).ClickAsync();
        await invited.WaitForURLAsync(url => !url.Contains("/account/", StringComparison.Ordinal));
    }

    /// <summary>Signs in as the first demo person of a role, as printed on the server's console.</summary>
    public static Task SignInAsDemoAsync(this IPage page, DeskServer server, string role)
    {
        var line = server.Console.Split('\n').First(text =>
            text.Contains(role, StringComparison.OrdinalIgnoreCase) && text.Contains("@example.org", StringComparison.Ordinal));
        var email = Email().Match(line).Value;
        return page.SignInAsync(email, DemoPhrase().Match(server.Console).Groups[1].Value);
    }

    [GeneratedRegex(@"[\w.+-]+@example\.org")]
    private static partial Regex Email();

    [GeneratedRegex("the phrase \"([^\"]+)\"")]
    private static partial Regex DemoPhrase();

    [GeneratedRegex("[A-Z0-9]{4}(-[A-Z0-9]{4}){3}")]
    private static partial Regex SetUpCode();
}
