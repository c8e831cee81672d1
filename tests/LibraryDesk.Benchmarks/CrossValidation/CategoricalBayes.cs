using System.Diagnostics;
using System.Text.Json;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Benchmarks.CrossValidation;

/// <summary>The same folds by an independent implementation: categorical naive Bayes of Debian's python3-sklearn, add-half smoothing, sizes cut in three.</summary>
internal static class CategoricalBayes
{
    private const string Python = "/usr/bin/python3";

    /// <summary>The record over all folds; null where scikit-learn is not installed.</summary>
    public static async Task<DeskRecord?> OnCucurbitaAsync(List<LabelledCase> cases, int[] folds)
    {
        if (!File.Exists(Python)) return null;
        var taxa = cases.Select(c => c.Taxon).Distinct().Order(StringComparer.Ordinal).ToList();
        var traits = cases.SelectMany(c => c.Scores).Select(s => s.Trait).Distinct().ToList();
        var states = traits.Select(t => cases.SelectMany(c => c.Scores).Where(s => s.Trait == t).Select(Cut).Distinct().Order(StringComparer.Ordinal).ToList()).ToList();
        var y = cases.ConvertAll(c => taxa.IndexOf(c.Taxon));
        var odds = await RunAsync(new
        {
            kind = "folds",
            alpha = 0.5,
            y,
            folds,
            classes = taxa.Count,
            categories = states.Select(s => s.Count),
            traits = traits.Select((t, k) => cases.Select(c => c.Scores.Where(s => s.Trait == t).Select(s => states[k].IndexOf(Cut(s))).Distinct())),
        });
        return odds is null ? null : DeskRecord.Of([.. odds.Select((row, i) => new JudgedForecast(row, y[i]))]);
    }

    private static string Cut(LabelledScore score) => score.Trait switch
    {
        "fruit_length_cm" => Band(score.State, 20, 30),
        "fruit_width_cm" => Band(score.State, 18, 24),
        "hundred_seed_weight_g" => Band(score.State, 14.6, 16.9),
        _ => score.State,
    };

    private static string Band(string state, double low, double high)
    {
        var value = ReferenceSets.Number(state);
        return value < low ? "low" : value < high ? "middle" : "high";
    }

    private static async Task<double[][]?> RunAsync(object job)
    {
        var start = new ProcessStartInfo(Python) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "CrossValidation", "categorical_bayes.py"));
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.StandardInput.WriteAsync(JsonSerializer.Serialize(job));
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        await errors;
        return process.ExitCode == 0 ? JsonSerializer.Deserialize<double[][]>(await output) : null;
    }
}
