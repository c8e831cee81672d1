using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace LibraryDesk.TestServers;

/// <summary>
/// A PostgreSQL server for this test process: the one named by LIBRARYDESK_TEST_POSTGRES (a connection string that may create
/// databases), else a throw-away cluster started from the installed binaries and stopped when the process ends.
/// </summary>
public static class TestPostgres
{
    private const string Setting = "LIBRARYDESK_TEST_POSTGRES";
    private static readonly Lazy<string> Server = new(() => Start());
    private static int _databases;

    /// <summary>Connection string of the server's maintenance database.</summary>
    public static string ConnectionString => Server.Value;

    /// <summary>
    /// Starts a cluster of its own that writes through to the medium at every commit, as a library's would, and stops it when the process
    /// ends; for benchmarks. Returns the connection string of its maintenance database.
    /// </summary>
    public static string StartDurable() => Start("-c shared_buffers=512MB -c max_wal_size=4GB");

    /// <summary>Makes a database, empty or as a copy of <paramref name="template"/>, and returns its connection string.</summary>
    public static async Task<string> CreateDatabaseAsync(string? template = null)
    {
        var name = $"t{Environment.ProcessId}_{Interlocked.Increment(ref _databases)}";
        await using var connection = new NpgsqlConnection(ConnectionString);
        await connection.OpenAsync();
        await ExecuteAsync(connection, $"drop database if exists {name} with (force)");
        await ExecuteAsync(connection, template is null ? $"create database {name}" : $"create database {name} template {template}");
        return new NpgsqlConnectionStringBuilder(ConnectionString) { Database = name, MaxPoolSize = 30 }.ToString();
    }

    /// <summary>Drops a database made by <see cref="CreateDatabaseAsync"/>.</summary>
    public static async Task DropDatabaseAsync(string connectionString)
    {
        NpgsqlConnection.ClearPool(new NpgsqlConnection(connectionString));
        var name = new NpgsqlConnectionStringBuilder(connectionString).Database;
        await using var connection = new NpgsqlConnection(ConnectionString);
        await connection.OpenAsync();
        await ExecuteAsync(connection, $"drop database if exists {name} with (force)");
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    private static string Start()
    {
        if (Environment.GetEnvironmentVariable(Setting) is { Length: > 0 } given) return given;
        // Tests lose nothing when the machine does: what they write need not reach the medium.
        return Start("-c fsync=off -c synchronous_commit=off -c full_page_writes=off");
    }

    private static string Start(string settings)
    {
        var binaries = Binaries();
        // Short: socket paths have a limit near 100 bytes.
        var asRoot = Environment.UserName == "root";
        Forsaken.ClearAway(folder => Stop(asRoot, binaries, folder));
        var folder = Forsaken.NewFolder();
        var port = FreePort();
        if (asRoot) Run("chown", "postgres", folder);
        RunAs(asRoot, $"{binaries}/initdb", "-D", $"{folder}/d", "-U", "desk", "--auth=trust", "--encoding=UTF8", "--locale=C.UTF-8", "--no-sync");
        var options = $"-p {port} -k {folder} -c listen_addresses=127.0.0.1 -c max_connections=300 {settings}";
        RunAs(asRoot, $"{binaries}/pg_ctl", "-D", $"{folder}/d", "-l", $"{folder}/log", "-w", "-o", options, "start");
        AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        {
            Stop(asRoot, binaries, folder);
            Directory.Delete(folder, recursive: true);
        };
        return $"Host=127.0.0.1;Port={port};Username=desk;Database=postgres";
    }

    private static void Stop(bool asRoot, string binaries, string folder) => RunAs(asRoot, $"{binaries}/pg_ctl", "-D", $"{folder}/d", "-m", "immediate", "-w", "stop");

    private static string Binaries() =>
        Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").OrderBy(path => int.TryParse(Path.GetFileName(path), out var v) ? v : 0).Last() + "/bin"
            : throw new InvalidOperationException(
                $"The tests need PostgreSQL. Install the package postgresql, or set {Setting} to a server that may create databases.");

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    // initdb refuses to run as root.
    private static void RunAs(bool asRoot, string program, params string[] arguments)
    {
        if (asRoot) Run("runuser", ["-u", "postgres", "--", program, .. arguments]);
        else Run(program, arguments);
    }

    private static void Run(string program, params string[] arguments)
    {
        // initdb tells a long story; only its end matters. pg_ctl's server would hold a pipe open, so output goes to nothing.
        string[] quiet = ["-c", "exec \"$@\" >/dev/null", "sh", program, .. arguments];
        var start = new ProcessStartInfo("sh", quiet) { WorkingDirectory = "/" };
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} ended with code {process.ExitCode}.");
    }
}
