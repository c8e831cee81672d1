using System.CommandLine;
using LibraryDesk.Cli;
using LibraryDesk.Cli.Guides;
using LibraryDesk.Cli.Identify;
using LibraryDesk.Cli.Verbs;

var desk = new RootCommand("The identification desk of a seed library, from the command line.")
{
    IdentifyVerb.Create(),
    GuideVerb.Create(),
    EvaluateVerb.Create(),
    VerifyVerb.Create(),
    CheckpointVerb.Create(),
    RebuildVerb.Create(),
    TraceVerb.Create(),
    SweepVerb.Create(),
    ReindexVerb.Create(),
};
var parsed = desk.Parse(args);
if (parsed.Errors.Count == 0) return await parsed.InvokeAsync();
foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync(error.Message);
return ExitCode.BadInput;
