using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Cli.Tests;

/// <summary><c>desk verify</c>, <c>desk checkpoint</c>, <c>desk rebuild</c> and <c>desk trace</c>, run as a librarian runs them.</summary>
public class LedgerVerbTests
{
    private static readonly Actor Librarian = Actor.Librarian(new Guid("11111111-1111-1111-1111-111111111111"));

    [Theory, OnBoth]
    public async Task A_sound_ledger_passes_also_after_a_donor_was_erased(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await ReceiveAsync(library);
        await using (var db = await library.OpenAsync())
        {
            Assert.Equal(1, await db.Set<DonorRow>().ExecuteUpdateAsync(set => set.SetProperty(donor => donor.Name, "").SetProperty(donor => donor.Contact, (string?)null)));
        }
        var outcome = await DeskAsync(library, "verify");
        Assert.Equal((0, "The ledger is sound: 3 entries."), (outcome.ExitCode, outcome.Lines[0]));
        Assert.Equal("height 3", outcome.Lines[1]);
    }

    [Theory, OnBoth]
    public async Task A_changed_byte_is_named_and_a_missing_entry_too(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await ReceiveAsync(library);
        await TamperAsync(library, "UPDATE ledger_entries SET payload = replace(payload, 'Millrace', 'Millrade') WHERE sequence = 2");
        var changed = await DeskAsync(library, "verify");
        Assert.Equal((1, "The ledger is NOT sound. Entry 2 has been changed: its hash is not the hash of what it says."), (changed.ExitCode, changed.Lines[0]));
        await TamperAsync(library, "DELETE FROM ledger_entries WHERE sequence = 2");
        var missing = await DeskAsync(library, "verify");
        Assert.Equal((1, "The ledger is NOT sound. Entry 2 should come next, but entry 3 does."), (missing.ExitCode, missing.Lines[0]));
    }

    [Theory, OnBoth]
    public async Task A_cut_off_tail_is_found_by_a_checkpoint_kept_elsewhere(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await ReceiveAsync(library);
        var printed = (await DeskAsync(library, "checkpoint")).Lines.Single();
        await ReceiveAsync(library);
        Assert.Equal(0, (await DeskAsync(library, "verify", "--checkpoint", printed)).ExitCode);
        // Whoever cuts the tail off tidily notes the new end beside the ledger as well.
        await TamperAsync(library, """
            DELETE FROM ledger_entries WHERE sequence > 2;
            UPDATE ledger_head SET height = 2, hash = (SELECT hash FROM ledger_entries WHERE sequence = 2)
            """);
        Assert.Equal(0, (await DeskAsync(library, "verify")).ExitCode);
        var checkedAgain = await DeskAsync(library, "verify", "--checkpoint", printed);
        Assert.Equal((1, "The ledger is NOT sound. The ledger ends at entry 2, but a checkpoint was taken at entry 3."), (checkedAgain.ExitCode, checkedAgain.Lines[0]));
    }

    [Theory, OnBoth]
    public async Task Rebuild_says_what_differs_and_sets_it_right(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await ReceiveAsync(library);
        await using (var db = await library.OpenAsync())
        {
            await db.Set<LotRow>().ExecuteUpdateAsync(set => set.SetProperty(lot => lot.Stock, 7));
            await db.Set<NameClaimRow>().ExecuteDeleteAsync();
        }
        var looked = await DeskAsync(library, "rebuild", "--check");
        Assert.Equal(1, looked.ExitCode);
        Assert.Contains(looked.Lines, line => line.StartsWith("lots 3: stands as", StringComparison.Ordinal));
        Assert.Contains(looked.Lines, line => line.StartsWith("name_claims 2: missing", StringComparison.Ordinal));
        Assert.EndsWith("2 different: not changed.", looked.Lines[^1], StringComparison.Ordinal);
        var set = await DeskAsync(library, "rebuild");
        Assert.Equal(0, set.ExitCode);
        Assert.EndsWith("2 different: set right.", set.Lines[^1], StringComparison.Ordinal);
        Assert.EndsWith("0 different: nothing to do.", (await DeskAsync(library, "rebuild", "--check")).Lines[^1], StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task Trace_says_where_seed_came_from_and_who_has_it(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var received = await ReceiveAsync(library);
        var packed = (await library.Act<PutUpPackets>().RunAsync(Librarian, received.Lot.ToString(), 2, Quantity.OfSeeds(20), null, null, default)).Match(put => put.Codes, no => throw new InvalidOperationException(no.Message));
        var member = new Guid("22222222-2222-2222-2222-222222222222");
        Assert.True((await library.Act<LendPacket>().RunAsync(Actor.Member(member), new Handover(packed[0].ToString()), default)).IsAllowed);
        var outcome = await DeskAsync(library, "trace", received.Lot.ToString()!);
        Assert.Equal([$"from: {received.Accession}", $"into: {packed[0]}, {packed[1]}", $"{packed[0]} with {member}"], outcome.Lines);
        Assert.Equal(2, (await DeskAsync(library, "trace", "L26-999")).ExitCode);
    }

    [Theory]
    [InlineData("verify", "--checkpoint", "12:abc")]
    [InlineData("verify", "--connection", "Data Source=/nowhere/library.db")]
    [InlineData("verify", "--database-provider", "postgres", "--connection", "Host=127.0.0.1;Port=1;Username=nobody")]
    public async Task What_cannot_be_read_is_told_in_plain_words(params string[] arguments)
    {
        var outcome = await DeskProcess.RunAsync(null, arguments);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Empty(outcome.Output);
        Assert.DoesNotContain("   at ", outcome.Errors, StringComparison.Ordinal);
        Assert.NotEmpty(outcome.Errors);
    }

    private static Task<DeskProcess.Outcome> DeskAsync(TestLibrary library, params string[] arguments) =>
        DeskProcess.RunAsync(null, [.. arguments, "--database-provider", library.Database, "--connection", library.ConnectionString]);

    private static async Task<AccessionReceived> ReceiveAsync(TestLibrary library) => (await library.Act<ReceiveAccession>().RunAsync(
        Librarian, new SeedOffer(new DonorEntry(null, "A donor"), SeedSource.Donor, "capsicum-annuum", "Millrace Red", Quantity.OfSeeds(500)), default))
        .Match(received => received, no => throw new InvalidOperationException(no.Message));

    // What somebody with the keys to the database could do.
    private static async Task TamperAsync(TestLibrary library, string sql)
    {
        await using var db = await library.OpenAsync();
        await db.Database.ExecuteSqlRawAsync(library.Database == "sqlite"
            ? "DROP TRIGGER IF EXISTS ledger_entries_never_change; DROP TRIGGER IF EXISTS ledger_entries_never_go;"
            : "ALTER TABLE ledger_entries DISABLE TRIGGER ALL");
        await db.Database.ExecuteSqlRawAsync(sql);
    }
}
