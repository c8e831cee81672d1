using System.CommandLine;
using System.Globalization;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Cli.Guides;

/// <summary><c>desk guide forms</c>: whether each form of a guide earns its place.</summary>
internal static class GuideFormsVerb
{
    public static Command Create()
    {
        var guide = new Argument<string>("guide") { Description = "Path of a guide file, or id of a built-in guide." };
        var verb = new Command("forms", "Show what sets each form apart, and what it does for the log loss of descriptions held out.") { guide };
        verb.SetAction((parsed, stop) => RunAsync(parsed.GetRequiredValue(guide), stop));
        return verb;
    }

    private static async Task<int> RunAsync(string name, CancellationToken stop)
    {
        if (await GuideByName.OpenAsync(name, stop) is not { } guide) return ExitCode.BadInput;
        var among = guide.Candidates.Where(c => c.Kind == CandidateKind.Species && c.Domesticated).Select(c => c.Id).ToList();
        var held = HeldOutForms.Of(guide, among);
        await LineAsync($"{guide.Id} {guide.Version}: a form stands with {FormStanding.LeastTraits} sourced traits or more that differ from its siblings together, {FormStanding.LeastFromNearest} from the nearest, and if descriptions held out do not show that it costs log loss");
        await LineAsync($"| species | form | traits apart | nearest sibling | apart from it | descriptions held out | log loss saved (nats) | standard error | stands |");
        await LineAsync($"|---|---|---|---|---|---|---|---|---|");
        foreach (var standing in FormStanding.Of(guide))
        {
            var effect = held?.Forms.FirstOrDefault(f => f.Candidate == standing.Candidate && f.Form == standing.Form);
            await LineAsync($"| {standing.Candidate} | {standing.Name} | {standing.Traits.Count} | {standing.Nearest} | {standing.FromNearest} | {effect?.Descriptions ?? 0} | {effect?.Gain ?? 0:F4} | {effect?.GainError ?? 0:F4} | {(standing.Stands && effect?.Costs is not true ? "yes" : "no")} |");
        }

        if (held is null)
        {
            await LineAsync($"no form is described by an opened source on two traits or more: nothing could be held out");
            return ExitCode.Done;
        }

        await LineAsync($"descriptions {held.Descriptions}, plants {held.Record.Cases}");
        await LineAsync($"accuracy {held.Record.Accuracy:F4}");
        await LineAsync($"log-loss {held.LogLoss:F4}");
        await LineAsync($"brier {held.Record.Brier:F4}");
        await LineAsync($"calibration-error {held.Record.CalibrationError:F4}");
        return ExitCode.Done;
    }

    private static Task LineAsync(FormattableString line) => Console.Out.WriteLineAsync(line.ToString(CultureInfo.InvariantCulture));
}
