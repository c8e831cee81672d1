using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>Acts that come together are written together; each still gets its own answer, in its own language.</summary>
public class TurnsAtTheLedgerTests
{
    [Theory, OnBoth]
    public async Task An_act_that_breaks_or_is_refused_takes_no_other_with_it(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var ledger = library.Act<SeedLedger>();
        var (broken, refused, done) = (0, 0, 0);
        await Task.WhenAll(Enumerable.Range(0, 24).Select(clerk => Task.Run(async () =>
        {
            switch (clerk % 4)
            {
                case 0:
                    await Assert.ThrowsAsync<InvalidOperationException>(() => ledger.RecordAsync<string>(ASeedLibrary.Librarian, _ => throw new InvalidOperationException("broken"), default));
                    Interlocked.Increment(ref broken);
                    break;
                case 1:
                    var outcome = await ledger.RecordAsync(ASeedLibrary.Librarian, RefuseAfterTakingNumbersAsync, default);
                    Assert.Equal("test.no", outcome.Refusal?.Code);
                    Interlocked.Increment(ref refused);
                    break;
                default:
                    await library.ReceiveAsync($"Name {clerk}");
                    Interlocked.Increment(ref done);
                    break;
            }
        })));
        Assert.Equal((6, 6, 12), (broken, refused, done));
        var report = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed();
        Assert.Equal((true, 36), (report.IsSound, report.Head.Height));
        Assert.Empty((await library.Act<RebuildState>().RunAsync(Actor.System, checkOnly: true, default)).Allowed().Differences);
    }

    [Theory, OnBoth]
    public async Task Each_act_runs_in_the_language_of_whoever_asked(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var ledger = library.Act<SeedLedger>();
        await Task.WhenAll(Enumerable.Range(0, 12).Select(clerk => Task.Run(async () =>
        {
            var mine = CultureInfo.GetCultureInfo(clerk % 2 == 0 ? "es" : "en");
            CultureInfo.CurrentUICulture = mine;
            var seen = await ledger.RecordAsync<string>(ASeedLibrary.Librarian, async work =>
            {
                await work.NextLotCodeAsync(2026);
                return new Refusal("test.no", CultureInfo.CurrentUICulture.Name);
            }, default);
            Assert.Equal(mine.Name, seen.Refusal?.Message);
        })));
    }

    [Theory, OnBoth]
    public async Task Whoever_gives_up_before_their_turn_is_told_so_and_nothing_is_written(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        using var gaveUp = new CancellationTokenSource();
        await gaveUp.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => library.Act<SeedLedger>().RecordAsync(ASeedLibrary.Librarian, RefuseAfterTakingNumbersAsync, gaveUp.Token));
        await library.ReceiveAsync();
        Assert.Equal(3, (await library.Act<LedgerCheckpoint>().RunAsync(Actor.System, default)).Allowed().Height);
    }

    private static async Task<Outcome<string>> RefuseAfterTakingNumbersAsync(SeedWork work)
    {
        work.Ids.Next<Lineage.Seeds.LotId>();
        await work.NextLotCodeAsync(2026);
        return new Refusal("test.no", "No.");
    }
}
