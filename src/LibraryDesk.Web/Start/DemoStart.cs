using LibraryDesk.Desk.Demo;

namespace LibraryDesk.Web.Start;

/// <summary>
/// The invented library for trying things out, asked for with <c>--demo</c>. Its sign-ins are known to everybody, so it is served on this
/// machine alone: where the server would listen to others too, it does not start.
/// </summary>
internal static class DemoStart
{
    public const string Setting = "Demo";
    private const string Switch = "--demo";
    private const string DefaultDatabase = "Data Source=app-data/library.db";
    private const string OwnDatabase = "app-data/demo.db";
    private const string DefaultPhotos = "app-data/photos";

    /// <summary>The arguments without the switch: the configuration would take the next argument for its value.</summary>
    public static string[] WithoutSwitch(string[] args) => [.. args.Where(arg => arg != Switch)];

    /// <summary>Where the demo is asked for, keeps it apart from the library's own data, unless the settings name another place.</summary>
    public static void Prepare(WebApplicationBuilder builder, string[] args)
    {
        var settings = builder.Configuration;
        if (args.Contains(Switch)) settings[Setting] = "true";
        if (!settings.GetValue<bool>(Setting)) return;
        if (settings["Database:ConnectionString"] == DefaultDatabase)
        {
            settings["Database:ConnectionString"] = $"Data Source={OwnDatabase}";
            builder.Services.AddSingleton(DemoDraft.Begin(OwnDatabase));
        }
        if (settings["Photos:Folder"] is null or DefaultPhotos) settings["Photos:Folder"] = "app-data/demo-photos";
        if (ShiftedClock.Of(settings) is { } clock) builder.Services.AddSingleton<TimeProvider>(clock);
        // Its letters go to invented addresses, so none leaves this machine.
        settings["Mail:Host"] = "";
        settings["Mail:DropFolder"] ??= "app-data/demo-mail";
        // Its sign-ins are known to everybody, so keys kept in the open are no news here.
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection.KeyManagement", LogLevel.Error);
    }

    /// <summary>Loads the demo where it is asked for; false when it must not be served, with the reason on the console.</summary>
    public static async Task<bool> LoadAsync(WebApplication app)
    {
        if (!app.Configuration.GetValue<bool>(Setting)) return true;
        if (!LoopbackOnly.HoldsFor(app.Configuration))
        {
            await Console.Error.WriteLineAsync("The demo's sign-ins are known to everybody, so it is only served on this machine. Use an address such as http://127.0.0.1:5280, or start without --demo.");
            return false;
        }
        await Console.Out.WriteLineAsync("Preparing the demo. The first start takes a moment.");
        var outcome = await DemoLoader.LoadAsync(app.Services, app.Lifetime.ApplicationStopping);
        if (outcome.Refusal is { } no)
        {
            await Console.Error.WriteLineAsync(no.Message);
            return false;
        }
        app.Services.GetService<DemoDraft>()?.Finish();
        var loaded = outcome.Match(value => value, _ => null!);
        app.Lifetime.ApplicationStarted.Register(() => Tell(app, loaded.SignIns));
        return true;
    }

    private static void Tell(WebApplication app, IReadOnlyList<DemoSignIn> signIns)
    {
        // The server may have been given addresses that the settings do not show; then it stops after all.
        if (app.Urls.Any(url => !LoopbackOnly.IsLoopback(url)))
        {
            Console.Error.WriteLine("The demo is not served to other machines. Stopping.");
            app.Lifetime.StopApplication();
            return;
        }
        Console.WriteLine($"The invented Quillbrook Seed Library is open at {app.Urls.FirstOrDefault()}");
        Console.WriteLine($"Sign in with the phrase \"{signIns[0].Phrase}\" as one of:");
        foreach (var person in signIns) Console.WriteLine($"  {person.Email,-28} {person.Role,-10} {person.Name}: {person.Why}");
    }
}
