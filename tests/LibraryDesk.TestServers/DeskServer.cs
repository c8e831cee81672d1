using System.Diagnostics;

namespace LibraryDesk.TestServers;

/// <summary>The real server in a process of its own, on a database and folders of its own. It can be killed and started again.</summary>
public sealed class DeskServer : IAsyncDisposable
{
    private readonly List<string> _console = [];
    private readonly string[] _more;
    private Process? _process;

    private DeskServer(string database, string connectionString, string folder, string[] more)
    {
        Database = database;
        ConnectionString = connectionString;
        Folder = folder;
        _more = more;
    }

    public string Database { get; }

    public string ConnectionString { get; }

    /// <summary>Holds the photos and the mail drop.</summary>
    public string Folder { get; }

    /// <summary>Where it listens, such as http://127.0.0.1:40123.</summary>
    public string Address { get; private set; } = "";

    /// <summary>Everything it has printed so far.</summary>
    public string Console
    {
        get
        {
            lock (_console) return string.Join('\n', _console);
        }
    }

    /// <summary>Starts a server on an empty, migrated database.</summary>
    /// <param name="database">sqlite or postgres.</param>
    /// <param name="more">More command-line arguments, such as --demo.</param>
    public static async Task<DeskServer> StartAsync(string database, params string[] more)
    {
        var server = new DeskServer(
            database, await MigratedCopy.MakeAsync(database), Directory.CreateTempSubdirectory("desk-web").FullName, more);
        await server.StartProcessAsync(port: 0);
        return server;
    }

    /// <summary>Waits until it has printed this text; the demo's sign-ins come after it listens.</summary>
    public async Task SaysAsync(string text)
    {
        while (!Console.Contains(text, StringComparison.Ordinal)) await Task.Delay(50);
    }

    /// <summary>Ends the process without warning, as a power cut would, and starts it again on the same address and data.</summary>
    public async Task KillAndStartAgainAsync()
    {
        var port = new Uri(Address).Port;
        _process!.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        await StartProcessAsync(port);
    }

    /// <summary>Adds what the server printed to the failure of a story, which is where its reason usually stands.</summary>
    public async Task TellOnFailureAsync(Func<Task> story)
    {
        try
        {
            await story();
        }
        catch (Exception failure)
        {
            throw new InvalidOperationException($"{failure.Message}\nThe server printed:\n{Console}", failure);
        }
    }

    /// <summary>Runs <c>desk</c> on this server's database.</summary>
    public async Task<(int Code, string Output)> DeskAsync(params string[] arguments)
    {
        var start = StartInfo("LibraryDesk.Cli", "desk.dll");
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync() + await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output);
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false })
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
        }
        _process?.Dispose();
        await MigratedCopy.DropAsync(Database, ConnectionString);
        Directory.Delete(Folder, recursive: true);
    }

    private async Task StartProcessAsync(int port)
    {
        var start = StartInfo("LibraryDesk.Web", "LibraryDesk.Web.dll");
        start.ArgumentList.Add("--urls");
        start.ArgumentList.Add($"http://127.0.0.1:{port}");
        foreach (var argument in _more) start.ArgumentList.Add(argument);
        var listening = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        _process = new Process { StartInfo = start, EnableRaisingEvents = true };
        _process.Exited += (_, _) => listening.TrySetException(new InvalidOperationException("The server ended:\n" + Console));
        _process.OutputDataReceived += (_, line) => Keep(line.Data, listening);
        _process.ErrorDataReceived += (_, line) => Keep(line.Data, listening);
        _process.Start();
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        Address = await listening.Task.WaitAsync(TimeSpan.FromMinutes(6));
    }

    private void Keep(string? line, TaskCompletionSource<string> listening)
    {
        const string Listening = "Now listening on: ";
        if (line is null) return;
        lock (_console) _console.Add(line);
        var at = line.IndexOf(Listening, StringComparison.Ordinal);
        if (at >= 0) listening.TrySetResult(line[(at + Listening.Length)..].Trim());
    }

    private ProcessStartInfo StartInfo(string project, string assembly)
    {
        var folder = Path.Combine(Repository.Root, "src", project);
        var start = new ProcessStartInfo("dotnet", [Path.Combine(folder, "bin", Repository.Configuration, "net10.0", assembly)])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["Database__Provider"] = Database;
        start.Environment["Database__ConnectionString"] = ConnectionString;
        start.Environment["Photos__Folder"] = Path.Combine(Folder, "photos");
        start.Environment["Mail__DropFolder"] = Path.Combine(Folder, "mail");
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        return start;
    }
}
