using System.CommandLine;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Cli.Identify;

/// <summary><c>desk identify</c>: ranks the cases of an answer file and prints one JSON object a line.</summary>
internal static class IdentifyVerb
{
    public static Command Create()
    {
        var guide = new Option<string>("--guide") { Description = "Id of a built-in guide, such as capsicum, or the path of a guide file.", Required = true };
        var answers = new Option<string>("--answers") { Description = "CSV file with columns case,trait,state and optionally sure,person,look; - reads standard input.", Required = true };
        var among = new Option<string?>("--among") { Description = "Candidate ids in play, parted by commas; all when left out." };
        var prior = new Option<string>("--prior") { Description = "guide: the guide's own shares; flat: all candidates alike.", DefaultValueFactory = _ => "guide" };
        prior.AcceptOnlyFromAmong("guide", "flat");
        var parts = new Option<string?>("--parts") { Description = "Ids of the parts the plants carry now, parted by commas, such as leaves,flowers; all when left out. Looks at other parts are listed as worth waiting for." };
        var verb = new Command("identify", "Rank the cases of an answer file; prints one JSON object a line.") { guide, answers, among, prior, parts };
        verb.SetAction((parsed, stop) => RunAsync(
            parsed.GetRequiredValue(guide),
            parsed.GetRequiredValue(answers),
            new Prior(parsed.GetValue(prior) == "flat", Ids(parsed.GetValue(among))),
            Ids(parsed.GetValue(parts))?.ToHashSet(),
            stop));
        return verb;
    }

    private static string[]? Ids(string? text) => text?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static async Task<int> RunAsync(string guideName, string answers, Prior prior, HashSet<string>? parts, CancellationToken stop)
    {
        var guide = await GuideByName.OpenAsync(guideName, stop);
        if (guide is null) return ExitCode.BadInput;
        if (prior.Among is { Count: 0 }) return await ComplainAsync("--among names no candidate");
        if (prior.UnknownAmong(guide) is { Count: > 0 } unknown)
        {
            return await ComplainAsync($"--among: {string.Join(", ", unknown)} is not in guide {guide.Id}. Its candidates are: {string.Join(", ", guide.Candidates.Select(c => c.Id))}");
        }

        if (parts?.FirstOrDefault(id => guide.Parts.All(p => p.Id != id)) is { } part)
        {
            return await ComplainAsync($"--parts: {part} is not in guide {guide.Id}. Its parts are: {string.Join(", ", guide.Parts.Select(p => p.Id))}");
        }

        await using var sheet = await AnswerFile.OpenAsync(answers, stop);
        if (sheet is null) return await ComplainAsync($"no file {answers}");
        var compiled = CompiledGuide.Compile(guide);
        var faults = await AnswerFileCheck.FaultsAsync(compiled, sheet, stop);
        if (faults.Count > 0) return await ComplainAsync([.. faults]);
        await using var output = Console.OpenStandardOutput();
        await BatchIdentifier.RunAsync(compiled, prior, parts, sheet, output, stop);
        return ExitCode.Done;
    }

    private static async Task<int> ComplainAsync(params string[] lines)
    {
        foreach (var line in lines) await Console.Error.WriteLineAsync(line);
        return ExitCode.BadInput;
    }
}
