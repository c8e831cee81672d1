using System.CommandLine;
using LibraryDesk.Desk.Cases.Sweeping;
using LibraryDesk.Desk.People;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Cli.Verbs;

/// <summary><c>desk sweep</c>: clears away photos that nothing on record points to. The server does the same once a day.</summary>
internal static class SweepVerb
{
    public static Command Create()
    {
        var library = new LibraryConnection();
        var command = new Command("sweep", "Clear away photos taken off their cases long ago, and files that nothing on record points to.");
        library.AddTo(command);
        library.AddPhotosTo(command);
        command.SetAction((parsed, stop) => library.RunAsync(parsed, async services =>
        {
            var outcome = await services.GetRequiredService<SweepPhotos>().RunAsync(Actor.System, stop);
            return outcome.Match(
                swept =>
                {
                    Console.WriteLine($"{swept.Rows} photos past putting back, {swept.Photos} stored photos nothing points to, {swept.Unfinished} half-written files: cleared away.");
                    return 0;
                },
                refusal =>
                {
                    Console.Error.WriteLine(refusal.Message);
                    return LibraryConnection.CannotOpen;
                });
        }));
        return command;
    }
}
