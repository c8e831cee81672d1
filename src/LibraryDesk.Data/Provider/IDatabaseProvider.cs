using LibraryDesk.Data.Seeds;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Data.Provider;

/// <summary>What differs between the embedded and the server database. One implementation per migrations project.</summary>
public interface IDatabaseProvider
{
    /// <summary>The value of the setting <c>Database:Provider</c> that chooses this one.</summary>
    string Name { get; }

    /// <summary>Sets the provider, its migrations assembly and its connection habits.</summary>
    void Configure(DbContextOptionsBuilder options, string connectionString);

    /// <summary>Brings the tables up to date. Safe when several servers start at the same moment.</summary>
    Task MigrateAsync(LibraryDbContext db, CancellationToken stop);

    /// <summary>
    /// Inside an open transaction: makes other appenders to the ledger wait until it ends, and reads the end of the chain as it then stands.
    /// Null in a library without entries.
    /// </summary>
    Task<LedgerHeadRow?> LockLedgerAsync(LibraryDbContext db, CancellationToken stop);

    /// <summary>True when a save failed because a value that must be unique was already there.</summary>
    bool IsUniqueViolation(DbUpdateException failure);
}
