using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Data.Sqlite;

/// <summary>
/// Makes the database itself refuse to change or delete a ledger entry. Put in place at every start rather than in a migration, so that a
/// guard that was taken away is back after the next start.
/// </summary>
internal static class LedgerGuard
{
    // REPLACE deletes without firing delete triggers, so an insert over an existing number is refused as well.
    private const string Sql = """
        CREATE TRIGGER IF NOT EXISTS ledger_entries_never_change BEFORE UPDATE ON ledger_entries
        BEGIN SELECT RAISE(ABORT, 'Ledger entries are never changed: write a correction.'); END;
        CREATE TRIGGER IF NOT EXISTS ledger_entries_never_go BEFORE DELETE ON ledger_entries
        BEGIN SELECT RAISE(ABORT, 'Ledger entries are never deleted: write a correction.'); END;
        CREATE TRIGGER IF NOT EXISTS ledger_entries_never_replaced BEFORE INSERT ON ledger_entries
        WHEN EXISTS (SELECT 1 FROM ledger_entries WHERE sequence = NEW.sequence)
        BEGIN SELECT RAISE(ABORT, 'Ledger entries are never replaced: write a correction.'); END;
        """;

    public static Task ApplyAsync(LibraryDbContext db, CancellationToken stop) => db.Database.ExecuteSqlRawAsync(Sql, stop);
}
