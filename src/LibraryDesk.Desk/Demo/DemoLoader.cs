using System.Text.Json;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Mail;
using LibraryDesk.Photos;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Desk.Demo;

/// <summary>Somebody to sign in as.</summary>
public sealed record DemoSignIn(string Name, string Role, string Email, string Phrase, string Why);

/// <summary>The demo, loaded now or before.</summary>
/// <param name="IsNew">True when this call loaded it.</param>
public sealed record DemoLoaded(bool IsNew, IReadOnlyList<DemoSignIn> SignIns);

/// <summary>
/// Plays the invented library of <c>seed-demo/</c> into an empty database, through the same acts as the screens, with the clock set to the
/// time of each act. Loading again changes nothing.
/// </summary>
public static class DemoLoader
{
    public const string NotEmptyCode = "demo.not-empty";

    /// <param name="services">The application's services; tables must be up to date.</param>
    /// <param name="stop">Stops between two acts; what was played stays, and the database must then be emptied by hand.</param>
    public static async Task<Outcome<DemoLoaded>> LoadAsync(IServiceProvider services, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(services);
        var demo = DemoFiles.Read();
        var phrase = demo.Settings.GetProperty("signInPhrase").GetString()!;
        DemoSignIn[] signIns = [.. demo.People.Where(person => person.Show is not null)
            .Select(person => new DemoSignIn(person.Name, person.Role, person.Email, phrase, person.Show!))];
        await using var db = await services.GetRequiredService<IDbContextFactory<LibraryDbContext>>().CreateDbContextAsync(stop);
        var settings = await db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop);
        if (settings?.DemoLoadedAt is not null) return new DemoLoaded(false, signIns);
        if (await db.Users.AnyAsync(stop)) return NotEmpty;

        var now = services.GetRequiredService<TimeProvider>().GetUtcNow();
        var clock = new DemoClock();
        await using var acts = Acts(services, clock);
        await PlayAsync(acts, clock, demo, phrase, now, stop);
        return new DemoLoaded(true, signIns);
    }

    private static Refusal NotEmpty { get; } = new(
        NotEmptyCode, "This database holds people already, so the demo is not loaded into it. Point Database:ConnectionString at a new one, or delete the unfinished one and start again.");

    // The desk's acts once more, by the demo's clock; database, photos and logs are the application's own.
    private static ServiceProvider Acts(IServiceProvider services, DemoClock clock)
    {
        var own = new ServiceCollection();
        own.AddSingleton<TimeProvider>(clock);
        own.AddSingleton(services.GetRequiredService<IConfiguration>());
        own.AddSingleton(services.GetRequiredService<ILoggerFactory>());
        own.AddLogging();
        own.AddSingleton(services.GetRequiredService<IDatabaseProvider>());
        var factory = services.GetRequiredService<IDbContextFactory<LibraryDbContext>>();
        own.AddSingleton(factory);
        own.AddScoped(_ => factory.CreateDbContext());
        if (services.GetService<IPhotoStore>() is { } photos) own.AddSingleton(photos);
        own.AddSingleton<IMailSender, NoPost>();
        own.AddDesk();
        return own.BuildServiceProvider();
    }

    /// <summary>The letters of the past reached nobody, and must not be sent today: they are ticked off.</summary>
    private sealed class NoPost : IMailSender
    {
        public Task SendAsync(OutgoingMailRow letter, CancellationToken stop) => Task.CompletedTask;
    }

    private static async Task PlayAsync(
        ServiceProvider acts, DemoClock clock, DemoLibrary demo, string phrase, DateTimeOffset now, CancellationToken stop)
    {
        var cast = new DemoCast();
        foreach (var person in demo.People)
        {
            clock.MoveTo(person.Joined);
            await using var scope = acts.CreateAsyncScope();
            var made = await scope.ServiceProvider.GetRequiredService<Accounts>().MakeAsync(person.Email, person.Name, phrase, person.Role);
            cast.Add(person.Handle, made.Match(user => user.Id, no => throw new InvalidOperationException($"people.json, {person.Handle}: {no.Message}")), person.Role);
        }
        await ChangeSettingsAsync(acts, row => Describe(row, demo.Settings), stop);

        var steps = demo.Steps.TakeWhile(step => step.On <= now).ToList();
        var seeds = new DemoSeeds(acts, cast);
        var guides = new DemoGuides(acts, cast);
        var cases = new DemoCases(acts, cast, seeds, demo.Cases, DemoPhotos.Draw(steps, stop));
        foreach (var step in steps)
        {
            stop.ThrowIfCancellationRequested();
            clock.MoveTo(step.On);
            await (step switch
            {
                { Case: not null } => cases.PlayAsync(step, stop),
                _ when step.Do.StartsWith(DemoGuides.Prefix, StringComparison.Ordinal) => guides.PlayAsync(step, stop),
                _ => seeds.PlayAsync(step, stop),
            });
        }
        clock.MoveTo(now);
        while (await acts.GetRequiredService<SendDueMail>().RunAsync(stop) > 0)
        {
        }
        await ChangeSettingsAsync(acts, row => row.DemoLoadedAt = now, stop);
    }

    private static async Task ChangeSettingsAsync(ServiceProvider acts, Action<LibrarySettingsRow> change, CancellationToken stop)
    {
        var settings = acts.GetRequiredService<LibrarySettings>();
        var shown = await settings.ReadAsync(stop);
        var changed = await settings.ChangeAsync(Actor.System, shown.Revision, change, stop);
        if (changed.Refusal is { } no) throw new InvalidOperationException($"library.json: {no.Message}");
    }

    private static void Describe(LibrarySettingsRow row, JsonElement settings)
    {
        row.Name = settings.GetProperty("name").GetString()!;
        row.Tagline = settings.GetProperty("tagline").GetString()!;
        row.CodePrefix = settings.GetProperty("codePrefix").GetString()!;
        row.OpinionsNeeded = settings.GetProperty("opinionsNeeded").GetInt32();
        // A server without the tz database keeps its own time.
        row.TimeZone = settings.GetProperty("timeZone").GetString() is { } zone && LibraryClock.Knows(zone) ? zone : "";
        row.SharingNotice = settings.GetProperty("sharingNotice").GetString()!;
    }
}
