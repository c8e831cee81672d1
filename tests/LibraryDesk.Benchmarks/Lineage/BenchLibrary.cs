using LibraryDesk.Data;
using LibraryDesk.Desk;
using LibraryDesk.TestServers;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>One database with a large library in it, and the desk's acts on it. PostgreSQL writes through at every commit, as it would for a library.</summary>
internal sealed class BenchLibrary : IAsyncDisposable
{
    private readonly ServiceProvider _services;

    private BenchLibrary(string database, string connectionString, ServiceProvider services)
    {
        Database = database;
        ConnectionString = connectionString;
        _services = services;
    }

    /// <summary>sqlite or postgres.</summary>
    public string Database { get; }

    public string ConnectionString { get; }

    /// <summary>The SQLite file.</summary>
    public string File => new SqliteConnectionStringBuilder(ConnectionString).DataSource;

    public static async Task<BenchLibrary> OnSqliteAsync() =>
        await MakeAsync("sqlite", $"Data Source={Path.Combine(Directory.CreateTempSubdirectory("deskbench").FullName, "library.db")}");

    public static async Task<BenchLibrary> OnPostgresAsync(string server, string name)
    {
        await using (var connection = new NpgsqlConnection(server))
        {
            await connection.OpenAsync();
            await using var create = new NpgsqlCommand($"CREATE DATABASE {name}", connection);
            await create.ExecuteNonQueryAsync();
        }

        return await MakeAsync("postgres", new NpgsqlConnectionStringBuilder(server) { Database = name }.ToString());
    }

    public T Act<T>()
        where T : notnull => _services.GetRequiredService<T>();

    public LibraryDbContext Open() => _services.GetRequiredService<IDbContextFactory<LibraryDbContext>>().CreateDbContext();

    /// <summary>Runs <c>desk</c> on this library as its own process.</summary>
    public Task<MeasuredProcess> DeskAsync(params string[] arguments) =>
        MeasuredProcess.RunAsync("dotnet", [Path.Combine(AppContext.BaseDirectory, "desk.dll"), .. arguments, "--database-provider", Database, "--connection", ConnectionString]);

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        if (Database != "sqlite") return;
        SqliteConnection.ClearAllPools();
        Directory.Delete(Path.GetDirectoryName(File)!, recursive: true);
    }

    private static async Task<BenchLibrary> MakeAsync(string database, string connectionString)
    {
        var services = TestLibrary.ServerOn(database, connectionString);
        await LibraryStart.PrepareAsync(services, CancellationToken.None);
        return new(database, connectionString, services);
    }
}
