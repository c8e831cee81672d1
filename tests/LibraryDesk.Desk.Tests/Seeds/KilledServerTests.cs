using System.Diagnostics;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>A server is killed in the middle of its work, again and again: what it acknowledged is there, and nothing is half there.</summary>
public class KilledServerTests
{
    [Theory, OnBoth]
    public async Task What_a_killed_server_acknowledged_is_there(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var random = new Random(20261125);
        var acknowledged = new List<string>();
        for (var round = 0; round < 5; round++) acknowledged.AddRange(await WorkUntilKilledAsync(library, random.Next(3, 60)));

        Assert.True(acknowledged.Count > 60);
        await using var db = await library.OpenAsync();
        var there = (await db.Set<AccessionRow>().Select(row => row.Code).ToListAsync()).Select(code => $"accession {code}")
            .Concat((await db.Set<LotRow>().Select(row => row.Code).ToListAsync()).Select(code => $"lot {code}"))
            .Concat((await db.Set<PacketRow>().Select(row => row.Code).ToListAsync()).Select(code => $"packet {code}"))
            .Concat((await db.Set<PacketRow>().Where(row => row.Standing == PacketStanding.Lent).Select(row => row.Code).ToListAsync()).Select(code => $"lent {code}"))
            .ToHashSet();
        Assert.Empty(acknowledged.Except(there));
        Assert.True((await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed().IsSound);
        Assert.Empty((await library.Act<RebuildState>().RunAsync(Actor.System, checkOnly: true, default)).Allowed().Differences);
    }

    // Four clerks are at it, so the kill falls into the middle of somebody's act.
    private static async Task<List<string>> WorkUntilKilledAsync(TestLibrary library, int lines)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "clerk.dll"), library.Database, library.ConnectionString, "4"]) { RedirectStandardOutput = true };
        using var server = Process.Start(start)!;
        var said = new List<string>();
        while (await server.StandardOutput.ReadLineAsync() is { } line)
        {
            said.Add(line);
            if (said.Count == lines) server.Kill();
        }
        await server.WaitForExitAsync();
        // The last line may have been cut short by the kill; then it was not said.
        if (said.Count > 0 && said[^1].Split(' ') is not [_, { Length: >= 7 }]) said.RemoveAt(said.Count - 1);
        Assert.True(said.Count >= lines - 1, $"The server ended by itself after {said.Count} lines.");
        return said;
    }
}
