using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>The database itself lets nobody change the ledger, whatever way they try.</summary>
public class LedgerGuardTests
{
    private static readonly string[] OnSqlite =
    [
        "UPDATE ledger_entries SET payload = 'x' WHERE sequence = 2",
        "UPDATE ledger_entries SET sequence = 9 WHERE sequence = 3",
        "DELETE FROM ledger_entries WHERE sequence = 3",
        // SQLite has no TRUNCATE; a bare DELETE is its quick way to empty a table.
        "DELETE FROM ledger_entries",
        "INSERT OR REPLACE INTO ledger_entries SELECT sequence, at, actor_id, kind, subjects, 'x', previous_hash, hash FROM ledger_entries WHERE sequence = 2",
        "REPLACE INTO ledger_entries SELECT * FROM ledger_entries WHERE sequence = 1",
        "INSERT INTO ledger_entries SELECT * FROM ledger_entries WHERE sequence = 2 ON CONFLICT (sequence) DO UPDATE SET payload = 'x'",
        "UPDATE OR REPLACE ledger_entries SET sequence = 1 WHERE sequence = 2",
    ];

    private static readonly string[] OnPostgres =
    [
        "UPDATE ledger_entries SET payload = 'x' WHERE sequence = 2",
        "UPDATE ledger_entries SET sequence = 9 WHERE sequence = 3",
        "DELETE FROM ledger_entries WHERE sequence = 3",
        "DELETE FROM ledger_entries",
        "TRUNCATE ledger_entries",
        "TRUNCATE ledger_subjects, ledger_entries CASCADE",
        "INSERT INTO ledger_entries SELECT * FROM ledger_entries WHERE sequence = 2 ON CONFLICT (sequence) DO UPDATE SET payload = 'x'",
        "MERGE INTO ledger_entries e USING (SELECT 2 AS n) s ON e.sequence = s.n WHEN MATCHED THEN DELETE",
        "SET session_replication_role = replica; DELETE FROM ledger_entries",
    ];

    public static TheoryData<string, string> Tries()
    {
        var tries = new TheoryData<string, string>();
        foreach (var sql in OnSqlite) tries.Add("sqlite", sql);
        foreach (var sql in OnPostgres) tries.Add("postgres", sql);
        return tries;
    }

    [Theory, MemberData(nameof(Tries))]
    public async Task No_statement_changes_the_ledger(string database, string sql)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        await using (var db = await library.OpenAsync())
        {
            var refused = await Assert.ThrowsAnyAsync<Exception>(() => db.Database.ExecuteSqlRawAsync(sql));
            Assert.Contains("Ledger entries are never", refused.Message, StringComparison.Ordinal);
        }
        await using var after = await library.OpenAsync();
        Assert.Equal(3, await after.Set<LedgerEntryRow>().CountAsync());
        Assert.True((await library.Act<VerifyLedger>().RunAsync(Actor.System, null, default)).Allowed().IsSound);
    }

    [Theory, OnBoth]
    public async Task A_guard_that_was_taken_away_is_back_after_the_next_start(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        await library.WithoutGuardAsync("SELECT 1");
        await LibraryStart.PrepareAsync(library.Services, default);
        await using var db = await library.OpenAsync();
        await Assert.ThrowsAnyAsync<Exception>(() => db.Set<LedgerEntryRow>().ExecuteDeleteAsync());
    }
}
