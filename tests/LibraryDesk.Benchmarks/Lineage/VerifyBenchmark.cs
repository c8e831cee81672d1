using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Ledger;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary><c>desk verify</c> and <c>desk rebuild --check</c> as processes of their own, against <c>sha256sum</c> over the very bytes that are hashed.</summary>
internal static class VerifyBenchmark
{
    private const int Rounds = 2;

    public static async Task RunAsync(TextWriter output, BenchLibrary library)
    {
        var file = Path.GetTempFileName();
        try
        {
            var entries = await WriteAsync(library, file);
            var megabytes = new FileInfo(file).Length / 1e6;
            var (sum, verify) = (await MeasuredProcess.RunAsync("sha256sum", file), await library.DeskAsync("verify"));
            for (var round = 1; round < Rounds; round++)
            {
                sum = Better(sum, await MeasuredProcess.RunAsync("sha256sum", file));
                verify = Better(verify, await library.DeskAsync("verify"));
            }

            var rebuild = await library.DeskAsync("rebuild", "--check");
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {library.Database} | {entries} | {megabytes:F0} MB | {sum.Seconds:F2} s ({sum.ProcessorSeconds:F2}) | {verify.Seconds:F2} s ({verify.ProcessorSeconds:F2}) | {verify.Seconds / sum.Seconds:F2} ({verify.ProcessorSeconds / sum.ProcessorSeconds:F2}) | {verify.PeakMegabytes:F0} MB | {rebuild.Seconds:F0} s | {rebuild.PeakMegabytes:F0} MB |"));
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static MeasuredProcess Better(MeasuredProcess one, MeasuredProcess other) =>
        new(Math.Min(one.Seconds, other.Seconds), Math.Min(one.ProcessorSeconds, other.ProcessorSeconds), Math.Max(one.PeakMegabytes, other.PeakMegabytes), other.Output);

    private static async Task<long> WriteAsync(BenchLibrary library, string path)
    {
        await using var db = library.Open();
        await using var file = new StreamWriter(path);
        var entries = 0L;
        await foreach (var row in db.Set<LedgerEntryRow>().AsNoTracking().OrderBy(entry => entry.Sequence).AsAsyncEnumerable())
        {
            await file.WriteAsync(Chain.CanonicalText(row.ToEntry()!));
            entries++;
        }

        return entries;
    }
}
