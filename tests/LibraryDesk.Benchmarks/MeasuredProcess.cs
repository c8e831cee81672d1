using System.Diagnostics;
using System.Globalization;

namespace LibraryDesk.Benchmarks;

/// <summary>Runs a program and says how long it took and how much memory it had at most.</summary>
/// <param name="Seconds">From start to end, the program's own start-up included.</param>
/// <param name="ProcessorSeconds">What it kept processors busy for: a busy machine stretches the time, not this.</param>
/// <param name="PeakMegabytes">The most it had resident, in millions of bytes, as the kernel counts; 0 where the kernel does not say.</param>
/// <param name="Output">What it printed; empty where that was not kept.</param>
internal sealed record MeasuredProcess(double Seconds, double ProcessorSeconds, double PeakMegabytes, string Output)
{
    /// <summary>Runs a program and keeps what it prints.</summary>
    public static Task<MeasuredProcess> RunAsync(string program, params string[] arguments) =>
        RunAsync(program, arguments, output => output.ReadToEndAsync());

    /// <summary>Runs a program whose output nobody keeps. It goes nowhere at once: reading it here would take processor time from the program.</summary>
    public static Task<MeasuredProcess> RunUnreadAsync(string program, params string[] arguments) =>
        RunAsync("/bin/sh", ["-c", "exec \"$@\" >/dev/null", "sh", program, .. arguments], output => output.ReadToEndAsync());

    private static async Task<MeasuredProcess> RunAsync(string program, string[] arguments, Func<StreamReader, Task<string>> read)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true };
        var before = ChildrenSeconds();
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var output = read(process.StandardOutput);
        var peak = 0.0;
        while (!process.HasExited)
        {
            peak = Math.Max(peak, Peak(process.Id));
            await Task.WhenAny(process.WaitForExitAsync(), Task.Delay(20));
        }

        var seconds = watch.Elapsed.TotalSeconds;
        return process.ExitCode == 0 ? new(seconds, ChildrenSeconds() - before, peak, await output) : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {await output}");
    }

    // Clock ticks of a hundredth of a second; the kernel adds a child's when it has ended.
    private static double ChildrenSeconds()
    {
        var fields = File.ReadAllText("/proc/self/stat").Split(')')[^1].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return (double.Parse(fields[13], CultureInfo.InvariantCulture) + double.Parse(fields[14], CultureInfo.InvariantCulture)) / 100;
    }

    private static double Peak(int process)
    {
        try
        {
            var line = File.ReadLines($"/proc/{process}/status").FirstOrDefault(line => line.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null ? 0 : double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) * 1024 / 1e6;
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
