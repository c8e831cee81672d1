using System.CommandLine;
using System.Globalization;

namespace LibraryDesk.Cli.Guides;

/// <summary><c>desk guide validate</c>: finds every fault of a guide file.</summary>
internal static class GuideValidateVerb
{
    public static Command Create()
    {
        var guide = new Argument<string>("guide") { Description = "Path of a guide file, or id of a built-in guide." };
        var verb = new Command("validate", "Find every fault of a guide, each with its line and trait.") { guide };
        verb.SetAction((parsed, stop) => RunAsync(parsed.GetRequiredValue(guide), stop));
        return verb;
    }

    private static async Task<int> RunAsync(string name, CancellationToken stop)
    {
        if (await GuideByName.ReadAsync(name, stop) is not { } reading)
        {
            await Console.Error.WriteLineAsync($"no guide {name}");
            return ExitCode.BadInput;
        }

        foreach (var fault in reading.Faults) await Console.Error.WriteLineAsync($"{name}: {fault}");
        if (reading.Guide is not { } guide) return ExitCode.BadInput;
        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"{guide.Id} {guide.Version}: no faults; {guide.Candidates.Count} candidates, {guide.Candidates.Sum(c => Math.Max(1, c.Forms.Count))} forms, {guide.Traits.Count} traits, {guide.Cells.Count} cells, {guide.Counts.Count} counts, {guide.Sources.Count} sources"));
        return ExitCode.Done;
    }
}
