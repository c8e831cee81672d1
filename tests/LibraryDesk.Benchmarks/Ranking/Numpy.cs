using System.Diagnostics;
using System.Globalization;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>The same sums by Debian's python3-numpy, on one core.</summary>
internal static class Numpy
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Seconds per case, or null where numpy is not installed.</summary>
    public static async Task<double?> SecondsPerCaseAsync(params int[] sizes)
    {
        if (!File.Exists(Python)) return null;
        var start = new ProcessStartInfo(Python) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["OPENBLAS_NUM_THREADS"] = "1";
        start.Environment["OMP_NUM_THREADS"] = "1";
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Ranking", "numpy_batch.py"));
        foreach (var size in sizes) start.ArgumentList.Add(size.ToString(CultureInfo.InvariantCulture));
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        await errors;
        return process.ExitCode == 0 ? double.Parse(output, CultureInfo.InvariantCulture) : null;
    }
}
