using System.Data.Common;
using System.Diagnostics;
using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Seeds;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Full ancestry, descent and holders of a packet: the desk's act, the same question in SQL by hand, and networkx.</summary>
internal static class TraceBenchmark
{
    private const int Questions = 500;

    // Each question is put several times and the best counts: whatever else the machine does only adds.
    private const int Rounds = 7;
    private const int PageRounds = 3;

    // Written by hand for this one question, prepared once, on a connection that stays open.
    private const string ByHand = """
        WITH RECURSIVE start(id) AS (SELECT id FROM packets WHERE code = @code),
        up(id) AS (SELECT id FROM start UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id),
        down(id) AS (SELECT id FROM start UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
        SELECT 0, id, NULL FROM up UNION ALL SELECT 1, down.id, p.holder_id FROM down LEFT JOIN packets p ON p.id = down.id
        """;

    public static async Task RunAsync(TextWriter output, BenchLibrary library, LargeLibrary made, Networkx? networkx)
    {
        var random = new Random(11);
        var packets = made.State.Packets.ToArray();
        await MeasureAsync(output, library, "any packet", Draw(packets, random), networkx);
        var old = made.State.GrowOuts.Where(growOut => growOut.SownOn.Year < 2007).Select(growOut => made.State.Find(new PacketId(growOut.From.Value))).OfType<Packet>().ToArray();
        await MeasureAsync(output, library, "a packet sown in the first ten seasons", Draw(old, random), null);
    }

    public static IReadOnlyList<Packet> Drawn(LargeLibrary made) => Draw([.. made.State.Packets], new Random(11));

    private static Packet[] Draw(Packet[] from, Random random) => [.. Enumerable.Range(0, Questions).Select(_ => from[random.Next(from.Length)])];

    private static async Task MeasureAsync(TextWriter output, BenchLibrary library, string what, Packet[] packets, Networkx? networkx)
    {
        await using var db = library.Open();
        await db.Database.OpenConnectionAsync();
        await using var byHand = db.Database.GetDbConnection().CreateCommand();
        byHand.CommandText = ByHand;
        var code = byHand.CreateParameter();
        code.ParameterName = "@code";
        code.DbType = System.Data.DbType.String;
        code.Value = "";
        byHand.Parameters.Add(code);
        await byHand.PrepareAsync();

        var act = library.Act<TraceSeed>();
        var page = library.Act<ShowPacket>();
        double[] ours = new double[packets.Length], hand = new double[packets.Length], pages = new double[packets.Length];
        var nodes = 0L;
        Array.Fill(ours, double.MaxValue);
        Array.Fill(hand, double.MaxValue);
        Array.Fill(pages, double.MaxValue);
        for (var round = 0; round < Rounds; round++)
        {
            for (var at = 0; at < packets.Length; at++)
            {
                var text = packets[at].Code.ToString();
                var start = Stopwatch.GetTimestamp();
                var trace = (await act.ReadAsync(Actor.System, text, default)).Match(found => found, no => throw new InvalidOperationException(no.Message));
                ours[at] = Math.Min(ours[at], Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                start = Stopwatch.GetTimestamp();
                code.Value = text;
                var (up, down, held) = await ReadAsync(byHand);
                hand[at] = Math.Min(hand[at], Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                if (up != trace.Ancestors.Count + 1 || down != trace.Descendants.Count + 1 || held != trace.Holders.Count) throw new InvalidOperationException($"The two answers for {text} differ.");
                nodes += round == 0 ? up + down : 0;
                if (round >= PageRounds) continue;
                start = Stopwatch.GetTimestamp();
                await page.ReadAsync(Actor.Visitor, text, default);
                pages[at] = Math.Min(pages[at], Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }

        var row = string.Create(CultureInfo.InvariantCulture, $"| {library.Database}: {what} | {nodes / packets.Length} | {At(ours, 0.5):F2} | {At(ours, 0.95):F2} | {At(hand, 0.5):F2} | {At(hand, 0.95):F2} | {At(ours, 0.95) / At(hand, 0.95):F2} | {At(pages, 0.95):F1} |");
        await output.WriteLineAsync(row);
        if (networkx is not null) await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{library.Database}: networkx needs {networkx.LoadSeconds:F1} s to load the graph and {networkx.QuerySeconds:F2} s for the {packets.Length} questions: {(networkx.LoadSeconds + (networkx.QuerySeconds / packets.Length)) * 1000 / ours.Average():F0} times the desk's time for one question, {(networkx.LoadSeconds + networkx.QuerySeconds) * 1000 / ours.Sum():F1} times for all of them."));
    }

    private static async Task<(int Up, int Down, int Held)> ReadAsync(DbCommand command)
    {
        var (up, down, holders) = (new List<long>(), new List<long>(), new List<(long, Guid)>());
        await using var rows = await command.ExecuteReaderAsync();
        while (await rows.ReadAsync())
        {
            (rows.GetInt32(0) == 0 ? up : down).Add(rows.GetInt64(1));
            if (!rows.IsDBNull(2)) holders.Add((rows.GetInt64(1), rows.GetGuid(2)));
        }

        return (up.Count, down.Count, holders.Count);
    }

    private static double At(double[] times, double part) => times.Order().ElementAt((int)Math.Ceiling(times.Length * part) - 1);
}
