using System.Globalization;
using System.Text.Json;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>The same questions put to Debian's python3-networkx, which loads the whole graph first.</summary>
/// <param name="LoadSeconds">Reading edges and holders from the SQLite file into the graph.</param>
/// <param name="QuerySeconds">Answering all questions.</param>
/// <param name="PeakMegabytes">The most memory it had.</param>
internal sealed record Networkx(double LoadSeconds, double QuerySeconds, double PeakMegabytes)
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Null where networkx is not installed.</summary>
    public static async Task<Networkx?> RunAsync(string sqliteFile, IEnumerable<long> packets)
    {
        if (!File.Exists(Python)) return null;
        var questions = Path.GetTempFileName();
        try
        {
            await File.WriteAllLinesAsync(questions, packets.Select(packet => packet.ToString(CultureInfo.InvariantCulture)));
            var run = await MeasuredProcess.RunAsync(Python, Path.Combine(AppContext.BaseDirectory, "Lineage", "networkx_trace.py"), sqliteFile, questions);
            var seconds = JsonSerializer.Deserialize<double[]>(run.Output)!;
            return new(seconds[0], seconds[1], run.PeakMegabytes);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
        finally
        {
            File.Delete(questions);
        }
    }
}
