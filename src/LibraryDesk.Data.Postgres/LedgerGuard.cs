using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Data.Postgres;

/// <summary>
/// Makes the database itself refuse to change or delete a ledger entry. Put in place at every start rather than in a migration, so that a
/// guard that was taken away is back after the next start.
/// </summary>
internal static class LedgerGuard
{
    // ALWAYS: a session that switches triggers off for replication does not pass. Left alone where it stands, since putting it in place
    // waits for everybody who is writing.
    private const string Sql = """
        CREATE OR REPLACE FUNCTION refuse_ledger_change() RETURNS trigger LANGUAGE plpgsql AS
        'BEGIN RAISE EXCEPTION ''Ledger entries are never changed or deleted: write a correction.'' USING ERRCODE = ''restrict_violation''; END';
        DO $guard$ BEGIN
            IF NOT EXISTS (SELECT 1 FROM pg_trigger WHERE tgrelid = 'ledger_entries'::regclass AND tgname = 'ledger_entries_never_change' AND tgenabled = 'A') THEN
                CREATE OR REPLACE TRIGGER ledger_entries_never_change BEFORE UPDATE OR DELETE OR TRUNCATE ON ledger_entries
                FOR EACH STATEMENT EXECUTE FUNCTION refuse_ledger_change();
                ALTER TABLE ledger_entries ENABLE ALWAYS TRIGGER ledger_entries_never_change;
            END IF;
        END $guard$;
        """;

    public static Task ApplyAsync(LibraryDbContext db, CancellationToken stop) => db.Database.ExecuteSqlRawAsync(Sql, stop);
}
