using System.CommandLine;
using LibraryDesk.Cli.Verbs;

var desk = new RootCommand("The identification desk of a seed library, from the command line.")
{
    VerifyVerb.Create(),
    CheckpointVerb.Create(),
    RebuildVerb.Create(),
};
return await desk.Parse(args).InvokeAsync();
