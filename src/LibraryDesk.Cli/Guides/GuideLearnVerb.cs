using System.CommandLine;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Cli.Guides;

/// <summary><c>desk guide learn</c>: makes a guide from plants of known identity.</summary>
internal static class GuideLearnVerb
{
    public static Command Create()
    {
        var labelled = new Option<string>("--labelled") { Description = "CSV file with columns case,taxon,trait,state; several rows of one trait are several states.", Required = true };
        var output = new Option<string?>("--out") { Description = "Guide file to write; standard output when left out." };
        var id = new Option<string>("--id") { Description = "Id of the new guide.", DefaultValueFactory = _ => "learned" };
        var version = new Option<string>("--guide-version") { Description = "Version of the new guide.", DefaultValueFactory = _ => "1" };
        var crop = new Option<string>("--crop") { Description = "Name of the crop.", DefaultValueFactory = _ => "Learned from labelled plants" };
        var flat = new Option<bool>("--flat-prior") { Description = "Make all taxa alike instead of by their number of plants." };
        var verb = new Command("learn", "Learn a guide from labelled score sheets.") { labelled, output, id, version, crop, flat };
        verb.SetAction((parsed, stop) => RunAsync(
            parsed.GetRequiredValue(labelled),
            parsed.GetValue(output),
            new LearnOptions(parsed.GetRequiredValue(id), parsed.GetRequiredValue(version), parsed.GetRequiredValue(crop), IsPriorFlat: parsed.GetValue(flat)),
            stop));
        return verb;
    }

    private static async Task<int> RunAsync(string labelled, string? output, LearnOptions options, CancellationToken stop)
    {
        if (await LabelledFile.ReadAsync(labelled) is not { } cases) return ExitCode.BadInput;
        if (cases.Select(c => c.Taxon).Distinct().Count() < 2)
        {
            await Console.Error.WriteLineAsync($"{labelled}: plants of two taxa at least are needed to tell anything apart");
            return ExitCode.BadInput;
        }

        var text = GuideText.Write(GuideLearner.Learn(cases, options));
        var faults = GuideFile.Read(text).Faults;
        foreach (var fault in faults) await Console.Error.WriteLineAsync($"the learned guide would not be valid: {fault}");
        if (faults.Count > 0) return ExitCode.BadInput;
        if (output is not null)
        {
            await File.WriteAllBytesAsync(output, text, stop);
            return ExitCode.Done;
        }

        await using var standard = Console.OpenStandardOutput();
        await standard.WriteAsync(text, stop);
        return ExitCode.Done;
    }
}
