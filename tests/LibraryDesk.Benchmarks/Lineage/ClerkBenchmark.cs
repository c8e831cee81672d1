using System.Diagnostics;
using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Eight clerks at once, each lending packets and taking them back, for a while; and the same by hand-written SQL.</summary>
internal static class ClerkBenchmark
{
    private const int Clerks = 8;
    private static readonly TimeSpan Shift = TimeSpan.FromSeconds(20);
    private static readonly Actor Librarian = Actor.Librarian(new Guid("11111111-1111-1111-1111-111111111111"));

    public static async Task RunAsync(TextWriter output, BenchLibrary library, LargeLibrary made)
    {
        var free = made.State.Packets.Where(packet => packet.Standing == PacketStanding.OnShelf && packet.PackedOn.Year is > 2010 and < 2026).ToArray();
        var drawers = Enumerable.Range(0, Clerks).Select(clerk => free.Where((_, at) => at % (Clerks * 101) == clerk).ToArray()).ToArray();
        await ShiftAsync(clerk => LendAndTakeBackAsync(library, drawers[clerk][0]), TimeSpan.FromSeconds(2));

        var ours = await ShiftAsync(ByTheDesk(library, drawers), Shift);
        var byHand = new HandWrittenLending[Clerks];
        for (var clerk = 0; clerk < Clerks; clerk++) byHand[clerk] = await HandWrittenLending.OpenAsync(library);
        var turns = new int[Clerks];
        var hand = await ShiftAsync(clerk => byHand[clerk].LendAndTakeBackAsync(drawers[clerk][turns[clerk]++ % drawers[clerk].Length]), Shift);
        foreach (var one in byHand) await one.DisposeAsync();

        var sound = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Match(report => report.IsSound, _ => false);
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {library.Database} | {ours.PerSecond:F0} ({ours.ProcessorMilliseconds:F2}) | {hand.PerSecond:F0} ({hand.ProcessorMilliseconds:F2}) | {ours.PerSecond / hand.PerSecond:F2} | {(sound ? "sound" : "NOT SOUND")} |"));
    }

    private static Func<int, Task<int>> ByTheDesk(BenchLibrary library, Packet[][] drawers)
    {
        var turns = new int[Clerks];
        return clerk => LendAndTakeBackAsync(library, drawers[clerk][turns[clerk]++ % drawers[clerk].Length]);
    }

    private static async Task<int> LendAndTakeBackAsync(BenchLibrary library, Packet packet)
    {
        var lent = (await library.Act<LendPacket>().RunAsync(Librarian, new Handover(packet.Code.ToString()), default)).Match(done => done, no => throw new InvalidOperationException(no.Message));
        var ended = await library.Act<EndLoan>().RunAsync(Librarian, lent.Loan.Value, LoanEnding.BroughtBack, null, default);
        return ended.IsAllowed ? 2 : throw new InvalidOperationException(ended.Refusal!.Message);
    }

    private static async Task<Pace> ShiftAsync(Func<int, Task<int>> work, TimeSpan length)
    {
        var acts = 0;
        using var self = Process.GetCurrentProcess();
        var before = self.TotalProcessorTime;
        var watch = Stopwatch.StartNew();
        await Task.WhenAll(Enumerable.Range(0, Clerks).Select(clerk => Task.Run(async () =>
        {
            while (watch.Elapsed < length) Interlocked.Add(ref acts, await work(clerk));
        })));
        self.Refresh();
        return new(acts / watch.Elapsed.TotalSeconds, (self.TotalProcessorTime - before).TotalMilliseconds / acts);
    }

    /// <param name="PerSecond">Acts acknowledged a second.</param>
    /// <param name="ProcessorMilliseconds">What an act kept processors busy for in this process; PostgreSQL's own share is not in it.</param>
    private readonly record struct Pace(double PerSecond, double ProcessorMilliseconds);
}
