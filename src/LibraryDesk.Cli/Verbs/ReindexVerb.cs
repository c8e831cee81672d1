using System.CommandLine;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Search;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Cli.Verbs;

/// <summary><c>desk reindex</c>: fills the search tables anew from the other tables.</summary>
internal static class ReindexVerb
{
    public static Command Create()
    {
        var library = new LibraryConnection();
        var command = new Command("reindex", "Fill the tables of the search anew.");
        library.AddTo(command);
        command.SetAction((parsed, stop) => library.RunAsync(parsed, async services =>
        {
            var outcome = await services.GetRequiredService<RebuildSearch>().RunAsync(Actor.System, stop);
            return outcome.Match(
                rebuilt =>
                {
                    Console.WriteLine($"{rebuilt.Lots} lots under {rebuilt.Names} names, found by {rebuilt.Words} words.");
                    return 0;
                },
                refusal =>
                {
                    Console.Error.WriteLine(refusal.Message);
                    return 1;
                });
        }));
        return command;
    }
}
