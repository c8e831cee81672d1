using System.Diagnostics;
using System.Globalization;
using LibraryDesk.TestServers;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Makes a large library, in the same run on both databases, and puts the questions of the day a name proves wrong to it.</summary>
internal static class LineageBenchmark
{
    private const int Seed = 20261125;
    private const int DefaultPackets = 1_000_000;

    /// <param name="output">Where the tables go.</param>
    /// <param name="arguments"><c>--packets N</c> for another size, <c>--only trace,verify,clerks,search</c> for some of the questions.</param>
    public static async Task RunAsync(TextWriter output, string[] arguments)
    {
        var packets = Option(arguments, "--packets") is { } size ? int.Parse(size, CultureInfo.InvariantCulture) : DefaultPackets;
        var only = Option(arguments, "--only")?.Split(',') ?? ["trace", "search", "verify", "clerks"];
        var server = TestPostgres.StartDurable();
        if (only.Contains("verify"))
        {
            await using var sqlite = await BenchLibrary.OnSqliteAsync();
            await using var postgres = await BenchLibrary.OnPostgresAsync(server, "tenth");
            // A tenth first: memory must be the same for both.
            await FillAsync(output, packets / 10, sqlite, postgres);
            await VerifyAsync(output, sqlite, postgres);
        }

        await using (var sqlite = await BenchLibrary.OnSqliteAsync())
        await using (var postgres = await BenchLibrary.OnPostgresAsync(server, "whole"))
        {
            var made = await FillAsync(output, packets, sqlite, postgres);
            if (only.Contains("trace")) await TraceAsync(output, made, sqlite, postgres);
            if (only.Contains("search")) await SearchAsync(output, made, sqlite, postgres);
            if (only.Contains("clerks")) await ClerksAsync(output, made, sqlite, postgres);
            if (only.Contains("verify")) await VerifyAsync(output, sqlite, postgres);
        }
    }

    private static string? Option(string[] arguments, string name)
    {
        var at = Array.IndexOf(arguments, name);
        return at >= 0 && at + 1 < arguments.Length ? arguments[at + 1] : null;
    }

    private static async Task<LargeLibrary> FillAsync(TextWriter output, int packets, params BenchLibrary[] libraries)
    {
        var watch = Stopwatch.StartNew();
        var made = new LargeLibrary(packets, Seed);
        var databases = libraries.Select(library => library.Open()).ToArray();
        await new LibraryFill(databases).RunAsync(made);
        foreach (var db in databases) await db.DisposeAsync();
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"\nLibrary: {made.State.Packets.Count} packets in {made.State.Lots.Count} lots, {made.State.Edges.Count} edges, {made.Head.Height} entries; made and written to both databases in {watch.Elapsed.TotalSeconds:F0} s."));
        return made;
    }

    private static async Task TraceAsync(TextWriter output, LargeLibrary made, BenchLibrary sqlite, BenchLibrary postgres)
    {
        var networkx = await Networkx.RunAsync(sqlite.File, TraceBenchmark.Drawn(made).Select(packet => packet.Id.Value));
        if (networkx is null) await output.WriteLineAsync("python3-networkx is not installed: no comparison with it");
        await output.WriteLineAsync("\n| ancestry, descent and holders of | nodes, mean | p50 ms | p95 ms | by hand p50 ms | by hand p95 ms | p95 ratio | whole packet page p95 ms |");
        await output.WriteLineAsync("|---|---|---|---|---|---|---|---|");
        foreach (var library in (BenchLibrary[])[sqlite, postgres]) await TraceBenchmark.RunAsync(output, library, made, networkx);
    }

    private static async Task SearchAsync(TextWriter output, LargeLibrary made, params BenchLibrary[] libraries)
    {
        foreach (var library in libraries) await SearchBenchmark.FillAsync(output, library);
        await output.WriteLineAsync("\n| search by | questions | p50 ms | p95 ms | by hand p50 ms | by hand p95 ms | p95 ratio |");
        await output.WriteLineAsync("|---|---|---|---|---|---|---|");
        foreach (var library in libraries) await SearchBenchmark.RunAsync(output, library, made);
    }

    private static async Task VerifyAsync(TextWriter output, params BenchLibrary[] libraries)
    {
        await output.WriteLineAsync("\n| verify (processor seconds) | entries | bytes hashed | sha256sum | desk verify | ratio | its peak memory | desk rebuild --check | its peak memory |");
        await output.WriteLineAsync("|---|---|---|---|---|---|---|---|---|");
        foreach (var library in libraries) await VerifyBenchmark.RunAsync(output, library);
    }

    private static async Task ClerksAsync(TextWriter output, LargeLibrary made, params BenchLibrary[] libraries)
    {
        await output.WriteLineAsync("\n| eight clerks lending and taking back | acts a second (processor ms an act) | by hand | ratio | chain afterwards |");
        await output.WriteLineAsync("|---|---|---|---|---|");
        foreach (var library in libraries) await ClerkBenchmark.RunAsync(output, library, made);
    }
}
