using System.CommandLine;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Cli.Verbs;

/// <summary><c>desk rebuild</c>: works stock, holders and holds out of the ledger again. Exit 0 when the tables agree or were set right, 1 when <c>--check</c> finds a difference.</summary>
internal static class RebuildVerb
{
    public static Command Create()
    {
        var library = new LibraryConnection();
        var check = new Option<bool>("--check") { Description = "Compare only; change nothing." };
        var command = new Command("rebuild", "Work the tables of stock, holders and holds out of the ledger again.") { check };
        library.AddTo(command);
        command.SetAction((parsed, stop) => library.RunAsync(parsed, async services =>
        {
            var outcome = await services.GetRequiredService<RebuildState>().RunAsync(Actor.System, parsed.GetValue(check), stop);
            return outcome.Match(
                report =>
                {
                    foreach (var difference in report.Differences) Console.WriteLine(difference);
                    var end = report.Repaired ? "set right" : report.DifferenceCount == 0 ? "nothing to do" : "not changed";
                    Console.WriteLine($"{report.Entries} entries, {report.Rows} rows, {report.DifferenceCount} different: {end}.");
                    return report.DifferenceCount == 0 || report.Repaired ? 0 : 1;
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
