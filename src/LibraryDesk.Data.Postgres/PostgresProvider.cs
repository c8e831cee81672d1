using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
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
        options.UseNpgsql(Prepared(connectionString), npgsql => npgsql.MigrationsAssembly(typeof(PostgresProvider).Assembly.GetName().Name)
            // A list is one parameter however long it is: the question reads the same for every list, and is planned once.
            .UseParameterizedCollectionMode(ParameterTranslationMode.Parameter));

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
    public async Task<LedgerHeadRow?> LockLedgerAsync(LibraryDbContext db, CancellationToken stop)
    {
        if (db.Database.CurrentTransaction is null) throw new InvalidOperationException("The ledger is locked inside a transaction only.");
        if (await HeadAsync(db, stop) is { } head) return head;
        // Before the first entry there is no row to lock: the first clerks of all take turns at a number instead, and look again.
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({LedgerLock})", stop);
        return await HeadAsync(db, stop);
    }

    /// <inheritdoc />
    public bool IsUniqueViolation(DbUpdateException failure) =>
        failure.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation };

    // FOR UPDATE waits for whoever holds the row and then reads what they left: lock and head in one round trip.
    private static Task<LedgerHeadRow?> HeadAsync(LibraryDbContext db, CancellationToken stop) =>
        db.Set<LedgerHeadRow>().FromSql($"SELECT * FROM ledger_head FOR UPDATE").SingleOrDefaultAsync(stop);

    // Statements used again and again are planned once a connection, unless the library's connection string says otherwise.
    private static string Prepared(string connectionString)
    {
        var connection = new NpgsqlConnectionStringBuilder(connectionString);
        if (!connection.ShouldSerialize("Max Auto Prepare")) connection.MaxAutoPrepare = 100;
        // Nothing is ever set for a session, so nothing has to be set back.
        if (!connection.ShouldSerialize("No Reset On Close")) connection.NoResetOnClose = true;
        return connection.ToString();
    }
}
