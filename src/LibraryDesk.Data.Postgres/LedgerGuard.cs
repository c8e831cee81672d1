using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Data.Postgres;

/// <summary>
/// Makes the database itself refuse to change or delete a ledger entry. Put in place at every start rather than in a migration, so that a
/// guard that was taken away is back after the next start.
/// </summary>
internal static class LedgerGuard
{
    private const string Sql = """
        CREATE OR REPLACE FUNCTION refuse_ledger_change() RETURNS trigger LANGUAGE plpgsql AS
        'BEGIN RAISE EXCEPTION ''Ledger entries are never changed or deleted: write a correction.'' USING ERRCODE = ''restrict_violation''; END';
        CREATE OR REPLACE TRIGGER ledger_entries_never_change BEFORE UPDATE OR DELETE OR TRUNCATE ON ledger_entries
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_ledger_change();
        """;

    public static Task ApplyAsync(LibraryDbContext db, CancellationToken stop) => db.Database.ExecuteSqlRawAsync(Sql, stop);
}
