using LibraryDesk.Data.Provider;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace LibraryDesk.Data.Postgres;

/// <summary>The grown-up database: several servers, many clerks.</summary>
public sealed class PostgresProvider : IDatabaseProvider
{
    // Any two constants will do; they only have to be the same on every server of one library.
    private const long MigrationLock = 0x4C_44_4D_49;
    private const long LedgerLock = 0x4C_44_4C_45;

    /// <inheritdoc />
    public string Name => "postgres";

    /// <inheritdoc />
    public void Configure(DbContextOptionsBuilder options, string connectionString) =>
        options.UseNpgsql(connectionString, npgsql => npgsql.MigrationsAssembly(typeof(PostgresProvider).Assembly.GetName().Name));

    /// <inheritdoc />
    public async Task MigrateAsync(LibraryDbContext db, CancellationToken stop)
    {
        // EF's own lock does not cover the creation of its history table, so servers starting together take turns here first.
        var connectionString = new NpgsqlConnectionStringBuilder(db.Database.GetConnectionString()) { Pooling = false };
        await using var turn = new NpgsqlConnection(connectionString.ToString());
        await turn.OpenAsync(stop);
        await using var take = new NpgsqlCommand("select pg_advisory_lock(@key)", turn);
        take.Parameters.AddWithValue("key", MigrationLock);
        await take.ExecuteNonQueryAsync(stop);
        await db.Database.MigrateAsync(stop);
        await LedgerGuard.ApplyAsync(db, stop);
    }

    /// <inheritdoc />
    public Task LockLedgerAsync(LibraryDbContext db, CancellationToken stop) =>
        db.Database.CurrentTransaction is null
            ? throw new InvalidOperationException("The ledger is locked inside a transaction only.")
            : db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({LedgerLock})", stop);

    /// <inheritdoc />
    public bool IsUniqueViolation(DbUpdateException failure) =>
        failure.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation };
}
