using System.Diagnostics;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>Times a piece of work: warm-up first, then the best of many rounds, since whatever else the machine does only adds.</summary>
internal static class Stopwatches
{
    /// <param name="Microseconds">Time of one call in the best round.</param>
    /// <param name="Bytes">Bytes allocated by one call.</param>
    public readonly record struct Timing(double Microseconds, double Bytes);

    public static Timing Measure(Action<int> work, int calls, int rounds = 101)
    {
        var until = Stopwatch.GetTimestamp() + Stopwatch.Frequency;
        for (var i = 0; Stopwatch.GetTimestamp() < until; i++) work(i % calls);
        var times = new double[rounds];
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var r = 0; r < rounds; r++)
        {
            var start = Stopwatch.GetTimestamp();
            for (var i = 0; i < calls; i++) work(i);
            times[r] = Stopwatch.GetElapsedTime(start).TotalMicroseconds / calls;
        }

        var bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / (double)(rounds * calls);
        return new Timing(times.Min(), bytes);
    }
}
