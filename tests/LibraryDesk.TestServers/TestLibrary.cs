using LibraryDesk.Data;
using LibraryDesk.Data.Postgres;
using LibraryDesk.Data.Sqlite;
using LibraryDesk.Desk;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace LibraryDesk.TestServers;

/// <summary>A library of its own for one test: fresh tables on a real database, the desk's acts, and a clock that stands still.</summary>
public sealed class TestLibrary : IAsyncDisposable
{
    private readonly ServiceProvider _services;

    private TestLibrary(ServiceProvider services, string database, string connectionString, FakeTimeProvider clock)
    {
        _services = services;
        Database = database;
        ConnectionString = connectionString;
        Clock = clock;
    }

    /// <summary>sqlite or postgres.</summary>
    public string Database { get; }

    public string ConnectionString { get; }

    public FakeTimeProvider Clock { get; }

    public IServiceProvider Services => _services;

    /// <summary>The act of that type.</summary>
    public TAct Act<TAct>() where TAct : notnull => _services.GetRequiredService<TAct>();

    public Task<LibraryDbContext> OpenAsync() =>
        _services.GetRequiredService<IDbContextFactory<LibraryDbContext>>().CreateDbContextAsync();

    /// <summary>The acts of a second server on the same database, as if started beside the first.</summary>
    public ServiceProvider AnotherServer() => Build(Database, ConnectionString, Clock, also: null);

    /// <summary>The acts of a server on a database, whatever is in it. The caller sees to the tables.</summary>
    public static ServiceProvider ServerOn(string database, string connectionString) => Build(database, connectionString, TimeProvider.System, also: null);

    /// <summary>Makes the tables on a database of its own. The clock starts at noon, 1 August 2026, UTC.</summary>
    /// <param name="database">sqlite or postgres.</param>
    /// <param name="also">More services, or replacements, before the provider is built.</param>
    public static async Task<TestLibrary> CreateAsync(string database, Action<IServiceCollection>? also = null)
    {
        var connectionString = await MigratedCopy.MakeAsync(database);
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 8, 1, 12, 0, 0, TimeSpan.Zero));
        var services = Build(database, connectionString, clock, also);
        return new TestLibrary(services, database, connectionString, clock);
    }

    internal static ServiceProvider Build(string database, string connectionString, TimeProvider clock, Action<IServiceCollection>? also)
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?>
            {
                ["Database:Provider"] = database,
                ["Database:ConnectionString"] = connectionString,
            })
            .Build();
        var services = new ServiceCollection();
        services.AddSingleton<IConfiguration>(configuration);
        services.AddSingleton(clock);
        services.AddLogging();
        services.AddLibraryData(configuration, new SqliteProvider(), new PostgresProvider());
        services.AddDesk();
        also?.Invoke(services);
        return services.BuildServiceProvider();
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        await MigratedCopy.DropAsync(Database, ConnectionString);
    }
}
