using System.CommandLine;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Cli.Verbs;

/// <summary><c>desk checkpoint</c>: prints the end of the ledger, to be kept elsewhere and given to <c>desk verify --checkpoint</c> later.</summary>
internal static class CheckpointVerb
{
    public static Command Create()
    {
        var library = new LibraryConnection();
        var command = new Command("checkpoint", "Print the ledger's height and hash, to be kept elsewhere and checked later.");
        library.AddTo(command);
        command.SetAction((parsed, stop) => library.RunAsync(parsed, async services =>
        {
            var head = await services.GetRequiredService<LedgerCheckpoint>().RunAsync(Actor.System, stop);
            return head.Match(
                known =>
                {
                    Console.WriteLine(known.ToString());
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
