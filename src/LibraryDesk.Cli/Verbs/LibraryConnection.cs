using System.CommandLine;
using System.Data.Common;
using LibraryDesk.Data;
using LibraryDesk.Data.Postgres;
using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Sqlite;
using LibraryDesk.Desk;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Cli.Verbs;

/// <summary>How a verb finds the library's database: options first, then the environment, then the server's appsettings.json.</summary>
internal sealed class LibraryConnection
{
    /// <summary>The exit code when the library cannot be opened at all.</summary>
    public const int CannotOpen = 2;

    private readonly Option<string?> _provider = new("--database-provider") { Description = "sqlite or postgres. Else Database__Provider, else appsettings.json, else sqlite." };
    private readonly Option<string?> _connection = new("--connection") { Description = "The connection string. Else Database__ConnectionString, else appsettings.json." };
    private readonly Option<DirectoryInfo?> _settings = new("--settings") { Description = "The folder with the server's appsettings.json. Else the current folder, or src/LibraryDesk.Web below it." };

    private readonly Option<bool> _demo = new("--demo") { Description = "The demo library, as the server keeps it when it is started with --demo." };

    private readonly Option<DirectoryInfo?> _photos = new("--photos") { Description = "The folder of the photos. Else Photos__Folder, else appsettings.json." };

    /// <summary>For a verb that works on the photos too.</summary>
    public void AddPhotosTo(Command command) => command.Options.Add(_photos);

    public void AddTo(Command command)
    {
        command.Options.Add(_provider);
        command.Options.Add(_connection);
        command.Options.Add(_settings);
        command.Options.Add(_demo);
    }

    /// <summary>Opens the library, runs the verb, and says in plain words when the library cannot be opened.</summary>
    public async Task<int> RunAsync(ParseResult parsed, Func<IServiceProvider, Task<int>> verb)
    {
        try
        {
            await using var services = Open(parsed);
            return await verb(services);
        }
        catch (Exception broken) when (broken is DbException or InvalidOperationException or ArgumentException)
        {
            await Console.Error.WriteLineAsync($"The library cannot be read: {broken.Message}");
            await Console.Error.WriteLineAsync("Check --database-provider and --connection, or read the demo with --demo, and start the server once so that its tables are there.");
            return CannotOpen;
        }
    }

    private ServiceProvider Open(ParseResult parsed)
    {
        var folder = Folder(parsed.GetValue(_settings));
        var configuration = new ConfigurationBuilder()
            .SetBasePath(folder)
            .AddJsonFile("appsettings.json", optional: true)
            .AddEnvironmentVariables()
            .AddInMemoryCollection(Given(parsed))
            .Build();
        if (IsSqlite(configuration)) configuration[ConnectionKey] = Existing(configuration[ConnectionKey] ?? new DatabaseOptions().ConnectionString, folder);

        if (parsed.CommandResult.Command.Options.Contains(_photos)) configuration[PhotosKey] = PhotoFolder(configuration[PhotosKey] ?? "app-data/photos", folder);

        var services = new ServiceCollection();
        services.AddSingleton<IConfiguration>(configuration);
        services.AddLogging(logging => logging.SetMinimumLevel(LogLevel.Warning));
        services.AddLibraryData(configuration, new SqliteProvider(), new PostgresProvider());
        services.AddDesk();
        return services.BuildServiceProvider();
    }

    private static string ProviderKey => $"{DatabaseOptions.Section}:{nameof(DatabaseOptions.Provider)}";

    private static string ConnectionKey => $"{DatabaseOptions.Section}:{nameof(DatabaseOptions.ConnectionString)}";

    private const string PhotosKey = "Photos:Folder";

    // Where the server keeps the demo apart from the library's own data.
    private const string DemoDatabase = "Data Source=app-data/demo.db";
    private const string DemoPhotos = "app-data/demo-photos";

    private Dictionary<string, string?> Given(ParseResult parsed)
    {
        var given = new Dictionary<string, string?>();
        if (parsed.GetValue(_demo)) (given[ProviderKey], given[ConnectionKey], given[PhotosKey]) = ("sqlite", DemoDatabase, DemoPhotos);
        if (parsed.GetValue(_provider) is { } provider) given[ProviderKey] = provider;
        if (parsed.GetValue(_connection) is { } connection) given[ConnectionKey] = connection;
        if (parsed.CommandResult.Command.Options.Contains(_photos) && parsed.GetValue(_photos) is { } photos) given[PhotosKey] = photos.FullName;
        return given;
    }

    private static bool IsSqlite(IConfiguration configuration) =>
        string.Equals(configuration[ProviderKey] ?? new DatabaseOptions().Provider, "sqlite", StringComparison.OrdinalIgnoreCase);

    // The server runs in the folder of its settings, so a path in them is meant from there. Opening must not make an empty library.
    private static string Existing(string connectionString, string folder)
    {
        var connection = new SqliteConnectionStringBuilder(connectionString);
        var file = Path.IsPathRooted(connection.DataSource) || File.Exists(connection.DataSource) ? connection.DataSource : Path.Combine(folder, connection.DataSource);
        if (!File.Exists(file)) throw new InvalidOperationException($"there is no file {file}.");
        connection.DataSource = file;
        connection.Mode = SqliteOpenMode.ReadWrite;
        return connection.ToString();
    }

    // The store would make a folder that is not there; a verb must not take an empty one for the library's.
    private static string PhotoFolder(string configured, string folder)
    {
        var path = Path.GetFullPath(configured, folder);
        return Directory.Exists(path) ? path : throw new InvalidOperationException($"there is no folder {path} with photos.");
    }

    private static string Folder(DirectoryInfo? given)
    {
        if (given is not null) return given.FullName;
        var here = Directory.GetCurrentDirectory();
        var web = Path.Combine(here, "src", "LibraryDesk.Web");
        return File.Exists(Path.Combine(here, "appsettings.json")) || !Directory.Exists(web) ? here : web;
    }
}
