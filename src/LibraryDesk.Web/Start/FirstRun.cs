using LibraryDesk.Desk.People;

namespace LibraryDesk.Web.Start;

/// <summary>Tells whoever can read the console how to make the first librarian.</summary>
internal static class FirstRun
{
    public static async Task TellAsync(WebApplication app)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var code = await scope.ServiceProvider.GetRequiredService<FirstLibrarian>().IssueCodeAsync(app.Lifetime.ApplicationStopping);
        if (code is null) return;
        // To the console and not to the log: logs travel, and the code opens the library.
        await Console.Out.WriteLineAsync($"This library has no librarian yet. Open /account/set-up and enter the code {code}");
    }
}
