using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>Times ranking, reasons and best next look on the pepper guide and on a large made-up one; ratios are of one run.</summary>
internal static class RankBenchmark
{
    private const int Answered = 8;

    public static async Task RunAsync(TextWriter output)
    {
        await output.WriteLineAsync("| what | time of one case | allocated |");
        await output.WriteLineAsync("|---|---|---|");
        await PeppersAsync(output);
        await LargeAsync(output);
    }

    private static async Task PeppersAsync(TextWriter output)
    {
        var guide = CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!);
        var cases = Cases(guide, 64);
        await RowAsync(output, "peppers: rank", Stopwatches.Measure(i => Ranker.Rank(guide, cases[i], Prior.OfGuide), cases.Length));
        await RowAsync(output, "peppers: best next look", Stopwatches.Measure(i => LookPlanner.Plan(guide, cases[i], Prior.OfGuide), cases.Length));
        await RowAsync(output, "peppers: rank + best next look", Stopwatches.Measure(i => RankAndLook(guide, cases[i]), cases.Length));
        await RowAsync(output, "peppers: rank + reasons + best next look", Stopwatches.Measure(i => RankReasonsAndLook(guide, cases[i]), cases.Length));
        var leaders = cases.Select(c => Ranker.Rank(guide, c, Prior.OfGuide).Candidates[0].Id).ToArray();
        await RowAsync(output, "peppers: typicality under the likeliest", Stopwatches.Measure(i => TypicalityFinder.Of(guide, cases[i], Prior.OfGuide, leaders[i]), cases.Length));
    }

    private static async Task LargeAsync(TextWriter output)
    {
        var guide = CompiledGuide.Compile(LargeGuide.Make());
        var cases = Cases(guide, 16);
        await RowAsync(output, $"{LargeGuide.Candidates} candidates x {LargeGuide.Traits} traits: rank", Stopwatches.Measure(i => Ranker.Rank(guide, cases[i], Prior.OfGuide), cases.Length));
        await RowAsync(output, $"{LargeGuide.Candidates} candidates x {LargeGuide.Traits} traits: best next look", Stopwatches.Measure(i => LookPlanner.Plan(guide, cases[i], Prior.OfGuide), cases.Length));
        var table = new double[LargeGuide.Candidates * LargeGuide.Traits * LargeGuide.States];
        Array.Fill(table, 1);
        // Turn by turn and as many calls a round: both meet the same clock, the same caches and the same neighbours.
        Action<int> call = i => RankAndLook(guide, cases[i]), read = _ => Sink = Read(table);
        var warm = Stopwatches.InTurns(cases.Length, null, call, read);
        var cold = Stopwatches.InTurns(1, DriveCachesOut, call, read);
        var ours = warm[0];
        await RowAsync(output, $"{LargeGuide.Candidates} candidates x {LargeGuide.Traits} traits: rank + best next look", ours);
        await RowAsync(output, "reading such a table once", warm[1]);
        await RowAsync(output, "rank + best next look, caches driven out before the call", cold[0]);
        await RowAsync(output, "reading such a table once, caches driven out before it", cold[1]);
        await output.WriteLineAsync();
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"Single call to one reading of the table: {ours.Microseconds / warm[1].Microseconds:F2}; with both from memory: {cold[0].Microseconds / cold[1].Microseconds:F2}"));
        if (await Numpy.SecondsPerCaseAsync(1000, LargeGuide.Candidates, LargeGuide.Traits, LargeGuide.States, Answered) is { } numpy)
        {
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"numpy, 1,000 cases in one batch, per case: {numpy * 1e6:F0} us; that is {numpy * 1e6 / ours.Microseconds:F2} of our single calls"));
        }
        else
        {
            await output.WriteLineAsync("python3-numpy is not installed: no comparison with numpy");
        }
    }

    public static double Sink { get; private set; }

    /// <summary>512 MB.</summary>
    private static readonly long[] Elsewhere = new long[64 << 20];

    /// <summary>Reads with the vectors that the desk reckons with; four sums, so that the reading waits for memory and not for an addition.</summary>
    private static double Read(double[] table)
    {
        Vector<double> a = default, b = default, c = default, d = default;
        var v = MemoryMarshal.Cast<double, Vector<double>>(table);
        for (var i = 0; i + 3 < v.Length; i += 4)
        {
            a += v[i];
            b += v[i + 1];
            c += v[i + 2];
            d += v[i + 3];
        }

        return Vector.Sum(a + b + c + d);
    }

    /// <summary>Goes through more memory than the largest caches hold, and writes it, so that nothing of the tables is left in them.</summary>
    private static void DriveCachesOut()
    {
        for (var i = 0; i < Elsewhere.Length; i += 8) Elsewhere[i]++;
    }

    private static Evidence[] Cases(CompiledGuide guide, int count)
    {
        var random = new Random(5);
        return [.. Enumerable.Range(0, count).Select(_ => Evidence.Check(guide, DrawnCases.Draw(guide, random, Answered)).Evidence!)];
    }

    private static void RankAndLook(CompiledGuide guide, Evidence evidence)
    {
        Ranker.Rank(guide, evidence, Prior.OfGuide);
        LookPlanner.Plan(guide, evidence, Prior.OfGuide);
    }

    private static void RankReasonsAndLook(CompiledGuide guide, Evidence evidence)
    {
        var ranking = Ranker.Rank(guide, evidence, Prior.OfGuide);
        ReasonFinder.Between(guide, evidence, Prior.OfGuide, ranking.Candidates[0].Id, ranking.Candidates[1].Id);
        LookPlanner.Plan(guide, evidence, Prior.OfGuide);
    }

    private static Task RowAsync(TextWriter output, string what, Stopwatches.Timing timing) =>
        output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {what} | {timing.Microseconds:F1} us | {timing.Bytes:F0} bytes |"));
}
