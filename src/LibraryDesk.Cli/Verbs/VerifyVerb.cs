using System.CommandLine;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Cli.Verbs;

/// <summary><c>desk verify</c>: walks the ledger. Exit 0 when sound, 1 with the first entry that does not fit.</summary>
internal static class VerifyVerb
{
    public static Command Create()
    {
        var library = new LibraryConnection();
        var checkpoint = new Option<string?>("--checkpoint") { Description = "A line printed earlier by desk checkpoint; the ledger must pass through it." };
        var command = new Command("verify", "Walk the seed ledger and name the first entry that does not fit.") { checkpoint };
        library.AddTo(command);
        command.SetAction((parsed, stop) => library.RunAsync(parsed, async services =>
        {
            var outcome = await services.GetRequiredService<VerifyLedger>().RunAsync(Actor.System, parsed.GetValue(checkpoint), stop);
            return outcome.Match(
                report =>
                {
                    Console.WriteLine(report.IsSound ? $"The ledger is sound: {report.Head.Height} entries." : $"The ledger is NOT sound. {report.Fault!.Why}");
                    Console.WriteLine($"height {report.Head.Height}");
                    Console.WriteLine($"head {report.Head.Hash}");
                    return report.IsSound ? 0 : 1;
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
