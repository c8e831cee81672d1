using System.CommandLine;
using System.Globalization;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Cli.Guides;

/// <summary><c>desk evaluate</c>: how true a guide's odds are on plants of known identity.</summary>
internal static class EvaluateVerb
{
    private const ulong FoldSeed = 1973;

    public static Command Create()
    {
        var guide = new Option<string?>("--guide") { Description = "Id of a built-in guide or path of a guide file. Leave out with --folds." };
        var labelled = new Option<string>("--labelled") { Description = "CSV file with columns case,taxon,trait,state.", Required = true };
        var prior = new Option<string>("--prior") { Description = "guide: the guide's own shares; flat: all candidates alike.", DefaultValueFactory = _ => "guide" };
        prior.AcceptOnlyFromAmong("guide", "flat");
        var folds = new Option<int?>("--folds") { Description = "Learn on all parts but one and judge on that one, for this many stratified parts, instead of judging a guide." };
        var verb = new Command("evaluate", "Accuracy, Brier score, log loss, calibration and confusion of a guide on labelled plants.") { guide, labelled, prior, folds };
        verb.SetAction((parsed, stop) => RunAsync(parsed.GetValue(guide), parsed.GetRequiredValue(labelled), parsed.GetValue(prior) == "flat", parsed.GetValue(folds), stop));
        return verb;
    }

    private static async Task<int> RunAsync(string? guideName, string labelled, bool isFlat, int? folds, CancellationToken stop)
    {
        if (guideName is null == folds is null) return await ComplainAsync("give either --guide or --folds");
        if (folds is < 2) return await ComplainAsync("--folds must be 2 or more");
        var guide = guideName is null ? null : await GuideByName.OpenAsync(guideName, stop);
        if (guideName is not null && guide is null) return ExitCode.BadInput;
        if (await LabelledFile.ReadAsync(labelled) is not { } cases) return ExitCode.BadInput;
        if (guide is null) return await JudgeByFoldsAsync(cases, folds!.Value, isFlat);

        var unknown = GuideEvaluation.UnknownTaxa(guide, cases);
        if (unknown.Count > 0)
        {
            return await ComplainAsync($"case {unknown[0].Case}: {unknown[0].Taxon} is not in guide {guide.Id}. Its candidates are: {string.Join(", ", guide.Candidates.Select(c => c.Id))}");
        }

        await PrintAsync(GuideEvaluation.Of(CompiledGuide.Compile(guide), cases, isFlat ? Prior.Flat : Prior.OfGuide));
        return ExitCode.Done;
    }

    private static async Task<int> JudgeByFoldsAsync(List<LabelledCase> cases, int folds, bool isFlat)
    {
        var labels = cases.ConvertAll(c => c.Taxon);
        if (labels.GroupBy(l => l).Any(g => g.Count() < 2) || labels.Distinct().Count() < 2) return await ComplainAsync("two taxa at least are needed, each with two plants at least");
        await PrintAsync(GuideEvaluation.CrossValidated(cases, Folds.Stratified(labels, folds, FoldSeed), new LearnOptions("learned", "1", "Learned", IsPriorFlat: isFlat)));
        return ExitCode.Done;
    }

    private static async Task PrintAsync(GuideEvaluation evaluation)
    {
        var record = evaluation.Record;
        await LineAsync($"cases {record.Cases}");
        await LineAsync($"accuracy {record.Accuracy:F4}");
        await LineAsync($"brier {record.Brier:F4}");
        await LineAsync($"log-loss {record.LogLoss:F4}");
        await LineAsync($"calibration-error {record.CalibrationError:F4}");
        await LineAsync($"calibration-error-95th-percentile-if-true {record.CalibrationErrorLimit:F4}");
        await LineAsync($"scores-left-out {evaluation.LeftOut.Count}");
        await LineAsync($"confusion (rows: what it was; columns: what came first)");
        await LineAsync($"taxon,{string.Join(",", evaluation.Taxa)}");
        for (var row = 0; row < evaluation.Taxa.Count; row++)
        {
            await LineAsync($"{evaluation.Taxa[row]},{string.Join(",", evaluation.Confusion[row].Select(n => n.ToString(CultureInfo.InvariantCulture)))}");
        }
    }

    private static Task LineAsync(FormattableString line) => Console.Out.WriteLineAsync(line.ToString(CultureInfo.InvariantCulture));

    private static async Task<int> ComplainAsync(string message)
    {
        await Console.Error.WriteLineAsync(message);
        return ExitCode.BadInput;
    }
}
