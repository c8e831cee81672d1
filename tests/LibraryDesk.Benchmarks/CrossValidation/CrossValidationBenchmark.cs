using System.Globalization;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Benchmarks.CrossValidation;

/// <summary>How true the odds are on plants the guide has not seen.</summary>
internal static class CrossValidationBenchmark
{
    private const ulong FoldSeed = 1973;

    private static readonly LearnOptions PlainBayes = new("set", "1", "Open set", Smoothing: 1, IsUnseenSmoothed: true, Temper: 1, DistinctForMeasured: 100);

    public static async Task<int> RunAsync(TextWriter output)
    {
        if (ReferenceSets.Find() is not { } sets)
        {
            await Console.Error.WriteLineAsync("no folder shared/reference/data/identification stands beside the repository");
            return 2;
        }

        await output.WriteLineAsync("| set | by | accuracy | Brier | log loss (nats) | calibration error | its 95th percentile if the odds were true |");
        await output.WriteLineAsync("|---|---|---|---|---|---|---|");
        var cucurbita = sets.Cucurbita();
        var folds = Folds.Stratified([.. cucurbita.Select(c => c.Taxon)], 10, FoldSeed);
        var learned = new LearnOptions("learned", "1", "Learned");
        await RowAsync(output, $"Cucurbita, {cucurbita.Count} accessions, ten-fold", "the desk", GuideEvaluation.CrossValidated(cucurbita, folds, learned).Record);
        if (await CategoricalBayes.OnCucurbitaAsync(cucurbita, folds) is { } theirs) await RowAsync(output, "the same folds", "scikit-learn", theirs);
        await RowAsync(output, "the plants it was learned from", "the desk", GuideEvaluation.Of(CompiledGuide.Compile(GuideLearner.Learn(cucurbita, learned)), cucurbita, Identification.Odds.Prior.OfGuide).Record);
        await LeaveOneOutAsync(output, "zoo", sets.Zoo());
        await LeaveOneOutAsync(output, "soybean", sets.Soybean());
        await LeaveOneOutAsync(output, "iris in thirds", sets.IrisInThirds());
        await PeppersAsync(output);
        return 0;
    }

    private static Task LeaveOneOutAsync(TextWriter output, string set, List<LabelledCase> cases) =>
        RowAsync(output, $"{set}, leave-one-out, add-one, no temper", "the desk", GuideEvaluation.CrossValidated(cases, [.. Enumerable.Range(0, cases.Count)], PlainBayes).Record);

    private static async Task PeppersAsync(TextWriter output)
    {
        var guide = BuiltInGuides.Open("capsicum")!.Guide!;
        string[] five = [.. guide.Candidates.Where(c => c.Kind == CandidateKind.Species && c.Domesticated).Select(c => c.Id)];
        var held = HeldOutForms.Of(guide, five)!;
        await RowAsync(output, $"peppers, {held.Descriptions} descriptions of forms held out", "the desk", held.Record);
        await RowAsync(output, "the same, each form standing for itself alone", "the desk", HeldOutForms.Of(guide with { FormSharing = 0 }, five)!.Record);
    }

    private static Task RowAsync(TextWriter output, string set, string by, DeskRecord r) =>
        output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {set} | {by} | {r.Accuracy:F4} | {r.Brier:F4} | {r.LogLoss:F4} | {r.CalibrationError:F4} | {r.CalibrationErrorLimit:F4} |"));
}
