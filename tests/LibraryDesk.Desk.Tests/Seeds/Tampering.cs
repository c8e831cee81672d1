using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>What somebody with the keys to the database could do: take the guard away and change the ledger.</summary>
internal static class Tampering
{
    public static async Task WithoutGuardAsync(this TestLibrary library, string sql)
    {
        await using var db = await library.OpenAsync();
        await db.Database.ExecuteSqlRawAsync(library.Database == "sqlite"
            ? "DROP TRIGGER ledger_entries_never_change; DROP TRIGGER ledger_entries_never_go;"
            : "ALTER TABLE ledger_entries DISABLE TRIGGER ALL");
        await db.Database.ExecuteSqlRawAsync(sql);
    }
}
