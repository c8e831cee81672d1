using System.Diagnostics;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>Times a piece of work: warm-up first, then the best of many rounds, since whatever else the machine does only adds.</summary>
internal static class Stopwatches
{
    private const int Rounds = 101;

    /// <param name="Microseconds">Time of one call in the best round.</param>
    /// <param name="Bytes">Bytes allocated by one call.</param>
    public readonly record struct Timing(double Microseconds, double Bytes);

    public static Timing Measure(Action<int> work, int calls) => InTurns(calls, null, work)[0];

    /// <summary>Times several pieces of work turn by turn, a round of each and then the next round, so that all meet the machine in the same state.</summary>
    /// <param name="calls">Calls in a round, the same for all, so that the best round is as lucky for one as for the other.</param>
    /// <param name="beforeEach">Done before every call and not timed, such as driving the caches out; null for nothing.</param>
    public static Timing[] InTurns(int calls, Action? beforeEach, params Action<int>[] works)
    {
        foreach (var work in works) WarmUp(work, calls);
        var best = new double[works.Length];
        var bytes = new long[works.Length];
        Array.Fill(best, double.PositiveInfinity);
        for (var r = 0; r < Rounds; r++)
        {
            for (var w = 0; w < works.Length; w++)
            {
                var before = GC.GetAllocatedBytesForCurrentThread();
                best[w] = Math.Min(best[w], Round(works[w], calls, beforeEach));
                bytes[w] += GC.GetAllocatedBytesForCurrentThread() - before;
            }
        }

        return [.. best.Zip(bytes, (time, all) => new Timing(time, all / (double)(Rounds * calls)))];
    }

    private static double Round(Action<int> work, int calls, Action? beforeEach)
    {
        var ticks = 0L;
        var start = Stopwatch.GetTimestamp();
        for (var i = 0; i < calls; i++)
        {
            if (beforeEach is not null)
            {
                beforeEach();
                start = Stopwatch.GetTimestamp();
            }

            work(i);
            if (beforeEach is not null) ticks += Stopwatch.GetTimestamp() - start;
        }

        if (beforeEach is null) ticks = Stopwatch.GetTimestamp() - start;
        return Stopwatch.GetElapsedTime(0, ticks).TotalMicroseconds / calls;
    }

    private static void WarmUp(Action<int> work, int calls)
    {
        var until = Stopwatch.GetTimestamp() + Stopwatch.Frequency;
        for (var i = 0; Stopwatch.GetTimestamp() < until; i++) work(i % calls);
    }
}
