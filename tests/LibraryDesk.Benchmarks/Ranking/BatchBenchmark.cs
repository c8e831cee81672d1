using System.Globalization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>Whole files through <c>desk identify</c> as its own process, start-up included: cases a second and the most memory it held.</summary>
internal static class BatchBenchmark
{
    private const int Answers = 8;

    public static async Task RunAsync(TextWriter output)
    {
        var desk = Path.Combine(AppContext.BaseDirectory, "desk.dll");
        await output.WriteLineAsync("| `desk identify`, cases of eight answers | seconds | cases a second | processor seconds | most memory |");
        await output.WriteLineAsync("|---|---|---|---|---|");
        foreach (var cases in new[] { 20_000, 100_000 })
        {
            var file = Path.GetTempFileName();
            try
            {
                await WriteAsync(file, cases);
                await RowAsync(output, desk, file, cases);
            }
            finally
            {
                File.Delete(file);
            }
        }
    }

    private static async Task RowAsync(TextWriter output, string desk, string file, int cases)
    {
        var run = await MeasuredProcess.RunUnreadAsync("dotnet", desk, "identify", "--guide", "capsicum", "--answers", file);
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {cases:N0} | {run.Seconds:F2} | {cases / run.Seconds:N0} | {run.ProcessorSeconds:F2} | {run.PeakMegabytes:F0} MB |"));
    }

    private static async Task WriteAsync(string file, int cases)
    {
        var guide = CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!);
        var random = new Random(7);
        // A thousand different plants, written over and over: drawing is slower than ranking.
        var plants = Enumerable.Range(0, 1000).Select(_ => DrawnCases.Draw(guide, random, Answers)).ToList();
        await using var writer = new StreamWriter(file);
        await writer.WriteLineAsync("case,trait,state");
        for (var i = 0; i < cases; i++)
        {
            foreach (var answer in plants[i % plants.Count])
            {
                var state = answer.States.Count > 0 ? answer.States[0] : answer.Bands[0].Low.ToString("F1", CultureInfo.InvariantCulture);
                await writer.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"case-{i},{answer.Trait},{state}"));
            }
        }
    }
}
