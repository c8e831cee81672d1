using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Data.Sqlite;

/// <summary>The embedded default: one file, nothing to install.</summary>
public sealed class SqliteProvider : IDatabaseProvider
{
    private const int UniqueConstraint = 2067;
    private const int PrimaryKeyConstraint = 1555;

    /// <inheritdoc />
    public string Name => "sqlite";

    /// <inheritdoc />
    public void Configure(DbContextOptionsBuilder options, string connectionString)
    {
        var connection = new SqliteConnectionStringBuilder(connectionString)
        {
            ForeignKeys = true,
            // Seconds a writer waits for another before it is told that the file is busy.
            DefaultTimeout = 30,
        };
        if (Path.GetDirectoryName(connection.DataSource) is { Length: > 0 } folder) Directory.CreateDirectory(folder);
        options.UseSqlite(connection.ToString(), sqlite => sqlite.MigrationsAssembly(typeof(SqliteProvider).Assembly.GetName().Name)
            // A list is one parameter however long it is: the question reads the same for every list, is planned once, and no list is too long.
            .UseParameterizedCollectionMode(ParameterTranslationMode.Parameter));
        options.AddInterceptors(new DurableWriteAheadLog());
    }

    /// <inheritdoc />
    public async Task MigrateAsync(LibraryDbContext db, CancellationToken stop)
    {
        var file = new SqliteConnectionStringBuilder(db.Database.GetConnectionString()).DataSource;
        await using var turn = await MigrationTurn.TakeAsync(file + ".migrating", stop);
        // A server killed while migrating leaves EF's own lock row behind, which would block every later start.
        // The turn above is released by the operating system when its holder dies, so a row found here is stale.
        await db.Database.OpenConnectionAsync(stop);
        await db.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\";", stop);
        await db.Database.MigrateAsync(stop);
        await LedgerGuard.ApplyAsync(db, stop);
        await db.Database.CloseConnectionAsync();
    }

    /// <inheritdoc />
    public Task<LedgerHeadRow?> LockLedgerAsync(LibraryDbContext db, CancellationToken stop) =>
        db.Database.CurrentTransaction is null
            ? throw new InvalidOperationException("The ledger is locked inside a transaction only.")
            // Microsoft.Data.Sqlite begins transactions as IMMEDIATE, so the one open already keeps other writers out.
            : db.Set<LedgerHeadRow>().SingleOrDefaultAsync(stop);

    /// <inheritdoc />
    public bool IsUniqueViolation(DbUpdateException failure) =>
        failure.InnerException is SqliteException { SqliteExtendedErrorCode: UniqueConstraint or PrimaryKeyConstraint };
}
