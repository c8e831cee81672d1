using LibraryDesk.Desk;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace LibraryDesk.TestServers;

/// <summary>Copies of a database that was migrated once in this process: a copy takes milliseconds, migrating takes half a second.</summary>
public static class MigratedCopy
{
    private static readonly Lazy<Task<string>> SqliteOriginal = new(MigrateSqliteAsync);
    private static readonly Lazy<Task<string>> PostgresOriginal = new(MigratePostgresAsync);
    // PostgreSQL copies a template only while nobody else is connected to it.
    private static readonly SemaphoreSlim CopyTurn = new(1);

    /// <summary>Makes a migrated database of its own; returns its connection string.</summary>
    public static async Task<string> MakeAsync(string database)
    {
        if (database == "sqlite")
        {
            var original = await SqliteOriginal.Value;
            var path = Path.Combine(Directory.CreateTempSubdirectory("desk").FullName, "library.db");
            File.Copy(original, path);
            return $"Data Source={path}";
        }
        var template = await PostgresOriginal.Value;
        await CopyTurn.WaitAsync();
        try
        {
            return await TestPostgres.CreateDatabaseAsync(template);
        }
        finally
        {
            CopyTurn.Release();
        }
    }

    /// <summary>Makes a database of its own without any tables; returns its connection string.</summary>
    public static async Task<string> MakeEmptyAsync(string database) => database == "sqlite"
        ? $"Data Source={Path.Combine(Directory.CreateTempSubdirectory("desk").FullName, "library.db")}"
        : await TestPostgres.CreateDatabaseAsync();

    /// <summary>Removes a database made by <see cref="MakeAsync"/>.</summary>
    public static async Task DropAsync(string database, string connectionString)
    {
        if (database == "sqlite")
        {
            // Pools are keyed by the full connection string the provider built, so all of them are let go.
            SqliteConnection.ClearAllPools();
            Directory.Delete(Path.GetDirectoryName(new SqliteConnectionStringBuilder(connectionString).DataSource)!, recursive: true);
            return;
        }
        await TestPostgres.DropDatabaseAsync(connectionString);
    }

    private static async Task<string> MigrateSqliteAsync()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("desk").FullName, "library.db");
        await MigrateAsync("sqlite", $"Data Source={path}");
        SqliteConnection.ClearAllPools();
        return path;
    }

    private static async Task<string> MigratePostgresAsync()
    {
        var connectionString = await TestPostgres.CreateDatabaseAsync();
        await MigrateAsync("postgres", connectionString);
        NpgsqlConnection.ClearAllPools();
        return new NpgsqlConnectionStringBuilder(connectionString).Database!;
    }

    private static async Task MigrateAsync(string database, string connectionString)
    {
        await using var services = TestLibrary.Build(database, connectionString, TimeProvider.System, also: null);
        await LibraryStart.PrepareAsync(services, CancellationToken.None);
    }
}
