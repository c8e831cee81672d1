using System.Globalization;
using System.Text;
using LibraryDesk.Data;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>A single bit flipped in the stored ledger is found, and the entry it belongs to is named.</summary>
public class FlippedBitTests
{
    private static readonly string[] Texts = ["kind", "subjects", "payload", "previous_hash", "hash"];

    [Theory, OnBoth]
    public async Task A_flipped_bit_anywhere_in_a_stored_entry_is_found_and_named(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        await library.WithoutGuardAsync("SELECT 1");
        var random = new Random(20261125);
        await using var db = await library.OpenAsync();
        for (var turn = 0; turn < 60; turn++)
        {
            var sequence = random.Next(1, 6);
            var (column, flip, restore) = await AFlipAsync(db, database, sequence, random);
            await RunAsync(db, flip);
            var fault = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed().Fault;
            Assert.True(sequence == fault?.Sequence, $"{column} of entry {sequence}: {flip}: {fault?.Why ?? "not found"}");
            await RunAsync(db, restore);
        }
        Assert.True((await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed().IsSound);
    }

    [Theory, OnBoth]
    public async Task A_flipped_bit_in_the_noted_end_is_found(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        await using var db = await library.OpenAsync();
        var hash = (await db.Set<LedgerHeadRow>().AsNoTracking().SingleAsync()).Hash;
        foreach (var wrong in (string[])[Flip(hash, 0, 0), Flip(hash, 5, 6)])
        {
            await db.Set<LedgerHeadRow>().ExecuteUpdateAsync(set => set.SetProperty(head => head.Hash, wrong));
            var fault = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed().Fault;
            Assert.Equal((3, Lineage.Ledger.ChainFaultKind.Checkpoint), (fault?.Sequence, fault?.Kind));
        }
    }

    [Theory, OnBoth]
    public async Task An_entry_put_past_the_noted_end_is_found(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        await using var db = await library.OpenAsync();
        var second = await db.Set<LedgerEntryRow>().AsNoTracking().SingleAsync(entry => entry.Sequence == 2);
        await db.Set<LedgerHeadRow>().ExecuteUpdateAsync(set => set.SetProperty(head => head.Height, 2L).SetProperty(head => head.Hash, second.Hash));
        var fault = (await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed().Fault;
        Assert.Equal((3, Lineage.Ledger.ChainFaultKind.Checkpoint), (fault?.Sequence, fault?.Kind));
    }

    private static async Task<(string Column, string Flip, string Restore)> AFlipAsync(LibraryDbContext db, string database, int sequence, Random random)
    {
        if (random.Next(8) == 0)
        {
            // One bit of the time's number: ticks on SQLite, microseconds on PostgreSQL.
            var step = 1L << random.Next(40);
            string Move(string sign) => database == "sqlite"
                ? string.Create(CultureInfo.InvariantCulture, $"UPDATE ledger_entries SET at = at {sign} {step} WHERE sequence = {sequence}")
                : string.Create(CultureInfo.InvariantCulture, $"UPDATE ledger_entries SET at = at {sign} interval '{step} microseconds' WHERE sequence = {sequence}");
            return ("at", Move("+"), Move("-"));
        }
        if (random.Next(8) == 0)
        {
            string Actor(char digit) => database == "sqlite"
                ? $"UPDATE ledger_entries SET actor_id = '{digit}' || substr(actor_id, 2) WHERE sequence = {sequence}"
                : $"UPDATE ledger_entries SET actor_id = ('{digit}' || substr(actor_id::text, 2))::uuid WHERE sequence = {sequence}";
            // The librarian's id begins with 1. On SQLite the flip may make what is no id at all.
            return ("actor_id", Actor(database == "sqlite" && random.Next(2) == 0 ? 'q' : '3'), Actor('1'));
        }
        var column = Texts[random.Next(Texts.Length)];
        var read = string.Create(CultureInfo.InvariantCulture, $"SELECT {column} AS \"Value\" FROM ledger_entries WHERE sequence = {sequence}");
        var text = await db.Database.SqlQueryRaw<string>(read).SingleAsync();
        string Set(string to) => $"UPDATE ledger_entries SET {column} = '{to.Replace("'", "''", StringComparison.Ordinal)}' WHERE sequence = {sequence}";
        return (column, Set(Flip(text, random.Next(Encoding.UTF8.GetByteCount(text)), random.Next(7))), Set(text));
    }

    // Straight to the database: what is written may hold braces.
    private static async Task RunAsync(LibraryDbContext db, string sql)
    {
        await db.Database.OpenConnectionAsync();
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        Assert.Equal(1, await command.ExecuteNonQueryAsync());
        await db.Database.CloseConnectionAsync();
    }

    // A text column holds no zero, and PostgreSQL no byte that is not UTF-8; there the next bit is flipped.
    private static string Flip(string text, int at, int bit)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var flipped = (byte)(bytes[at] ^ (1 << bit));
        bytes[at] = flipped == 0 || bytes[at] > 0x7f ? (byte)(bytes[at] ^ 1) : flipped;
        return Encoding.UTF8.GetString(bytes);
    }
}
