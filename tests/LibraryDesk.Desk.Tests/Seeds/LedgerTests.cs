using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.Seeds;

public class LedgerTests
{
    [Theory, OnBoth]
    public async Task Acts_make_one_sound_chain(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        var report = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed();
        Assert.True(report.IsSound, report.Fault?.Why);
        Assert.Equal(5, report.Head.Height);
    }

    [Theory, OnBoth]
    public async Task One_changed_byte_is_found_and_its_entry_named(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Millrace Red");
        await library.WithoutGuardAsync("UPDATE ledger_entries SET payload = replace(payload, 'Millrace', 'Millrade') WHERE sequence = 2");
        var report = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed();
        Assert.Equal((2, ChainFaultKind.Hash), (report.Fault?.Sequence, report.Fault?.Kind));
    }

    [Theory, OnBoth]
    public async Task An_entry_cut_off_the_end_is_missed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        await library.WithoutGuardAsync("DELETE FROM ledger_entries WHERE sequence = 3");
        var report = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed();
        Assert.Equal(ChainFaultKind.Checkpoint, report.Fault?.Kind);
    }

    [Theory, OnBoth]
    public async Task A_ledger_written_anew_does_not_pass_an_older_checkpoint(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Millrace Red");
        var kept = (await library.Act<LedgerCheckpoint>().RunAsync(Actor.System, default)).Allowed().ToString();
        await using var another = await TestLibrary.CreateAsync(database);
        await another.ReceiveAsync("Another Name");
        var report = (await another.Act<VerifyLedger>().RunAsync(Actor.System, kept, default)).Allowed();
        Assert.Equal(ChainFaultKind.Checkpoint, report.Fault?.Kind);
    }

    [Theory, OnBoth]
    public async Task A_kept_checkpoint_holds_until_the_ledger_changes_and_a_slip_of_the_pen_is_told_from_that(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Millrace Red");
        var kept = (await library.Act<LedgerCheckpoint>().RunAsync(Actor.System, default)).Allowed();
        await library.ReceiveAsync("Lockside Red");
        async Task<CheckedCheckpoint> CheckAsync(string typed) => (await library.Act<CheckCheckpoint>().RunAsync(ASeedLibrary.Librarian, typed, default)).Allowed();

        var holds = await CheckAsync(kept.ToString());
        Assert.Equal((CheckpointStanding.Holds, 6L), (holds.Standing, holds.End.Height));
        var slip = kept.Hash.Hex[0] == '0' ? '1' : '0';
        var mistyped = await CheckAsync($"{kept.Height}:{slip}{kept.Hash.Hex[1..]}");
        Assert.Equal((CheckpointStanding.OtherHash, 1), (mistyped.Standing, mistyped.Differing));
        Assert.Equal(CheckpointStanding.OtherHash, (await CheckAsync($"2:{kept.Hash.Hex}")).Standing);
        Assert.Equal(CheckpointStanding.Beyond, (await CheckAsync($"7:{kept.Hash.Hex}")).Standing);

        // Whoever changes an early entry and leaves the later ones alone passes the comparison, not the walk.
        await library.WithoutGuardAsync("UPDATE ledger_entries SET payload = replace(payload, 'Millrace', 'Millrade') WHERE sequence = 2");
        var damaged = await CheckAsync(kept.ToString());
        Assert.Equal((CheckpointStanding.Damaged, 2L), (damaged.Standing, damaged.Fault!.Sequence));
        Assert.Equal(PeopleRefusals.MayNotCode, (await library.Act<CheckCheckpoint>().RunAsync(ASeedLibrary.Member, kept.ToString(), default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Eight_clerks_at_once_keep_the_chain(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await Task.WhenAll(Enumerable.Range(0, 8).Select(clerk => Task.Run(async () =>
        {
            for (var turn = 0; turn < 5; turn++) await library.ReceiveAsync($"Name {clerk} {turn}");
        })));
        var report = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed();
        Assert.Equal((true, 120), (report.IsSound, report.Head.Height));
        await using var db = await library.OpenAsync();
        Assert.Equal(40, await db.Set<LotRow>().Select(lot => lot.Code).Distinct().CountAsync());
    }

    [Theory, OnBoth]
    public async Task Of_two_librarians_with_the_last_packet_one_lends_it(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var otherServer = library.AnotherServer();
        for (var round = 0; round < 5; round++)
        {
            var lot = (await library.ReceiveAsync()).Lot.ToString()!;
            var code = (await library.PacketsAsync(lot)).Single();
            var outcomes = await Task.WhenAll(
                Task.Run(() => library.Act<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(code, ASeedLibrary.Member.UserId), default)),
                Task.Run(() => otherServer.GetRequiredService<LendPacket>().RunAsync(ASeedLibrary.Librarian, new Handover(code, ASeedLibrary.OtherMember.UserId), default)));
            Assert.Single(outcomes, outcome => outcome.IsAllowed);
            Assert.Equal(Lineage.Rules.LendingRules.AlreadyOutCode, outcomes.Single(outcome => !outcome.IsAllowed).Refusal!.Code);
        }
    }

    [Theory, OnBoth]
    public async Task Two_librarians_who_ask_for_the_last_packet_at_once_get_it_once(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var otherServer = library.AnotherServer();
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        var first = (await library.Act<RequestPacket>().RunAsync(ASeedLibrary.Member, lot, default)).Allowed();
        var second = (await library.Act<RequestPacket>().RunAsync(ASeedLibrary.OtherMember, lot, default)).Allowed();
        var outcomes = await Task.WhenAll(
            Task.Run(() => library.Act<PickPacket>().RunAsync(ASeedLibrary.Librarian, first.Value, code, default)),
            Task.Run(() => otherServer.GetRequiredService<PickPacket>().RunAsync(ASeedLibrary.Librarian, second.Value, code, default)));
        Assert.Single(outcomes, outcome => outcome.IsAllowed);
        Assert.Equal(Lineage.Rules.LendingRules.KeptForAnotherCode, outcomes.Single(outcome => !outcome.IsAllowed).Refusal!.Code);
    }

    [Theory, OnBoth]
    public async Task A_refused_act_leaves_nothing_behind(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync(seeds: 30)).Lot.ToString()!;
        var refused = await library.Act<PutUpPackets>().RunAsync(ASeedLibrary.Librarian, lot, 2, Quantity.OfSeeds(20), null, null, default);
        Assert.Equal(Lineage.Rules.SeedRefusals.MoreThanThereCode, refused.Refusal?.Code);
        await using var db = await library.OpenAsync();
        Assert.Equal(0, await db.Set<PacketRow>().CountAsync());
        Assert.Equal(0, await db.Set<CodeSeriesRow>().CountAsync(series => series.Kind == "P"));
        Assert.Equal(30, (await db.Set<LotRow>().SingleAsync()).Stock);
    }

    [Theory, OnBoth]
    public async Task The_ledger_names_nobody(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        await using var db = await library.OpenAsync();
        Assert.DoesNotContain(await db.Set<LedgerEntryRow>().ToListAsync(), entry => entry.Payload.Contains("A donor", StringComparison.Ordinal));
        Assert.Equal("A donor", (await db.Set<DonorRow>().SingleAsync()).Name);
    }
}
