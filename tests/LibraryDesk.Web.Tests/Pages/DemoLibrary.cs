using System.Net;
using System.Text.RegularExpressions;
using LibraryDesk.Data;
using LibraryDesk.TestServers;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Web.Tests.Pages;

/// <summary>The whole server in this process, on SQLite, with the demo library.</summary>
public sealed partial class DemoLibrary : IAsyncLifetime
{
    // signInPhrase of seed-demo/library.json.
    private const string Phrase = "paper packets in rows";
    private readonly Faults _faults = new();
    private readonly string _folder = Directory.CreateTempSubdirectory("desk-pages").FullName;
    private WebApplicationFactory<Program>? _server;
    private string _database = "";

    internal Waits Waits { get; } = new();

    /// <summary>The faults the server has logged since the last call.</summary>
    public string TakeFaults() => _faults.Take();

    public async Task InitializeAsync()
    {
        _database = await MigratedCopy.MakeAsync("sqlite");
        _server = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("Database:Provider", "sqlite")
            .UseSetting("Database:ConnectionString", _database)
            .UseSetting("Photos:Folder", Path.Combine(_folder, "photos"))
            .UseSetting("Mail:DropFolder", Path.Combine(_folder, "mail"))
            .UseSetting("Demo", "true")
            .UseSetting("Urls", "http://127.0.0.1:0")
            .UseEnvironment("Production")
            .ConfigureLogging(logging => logging.ClearProviders().AddProvider(new ToFaults(_faults)))
            .ConfigureTestServices(services =>
            {
                services.AddSingleton<IStartupFilter>(Waits);
                services.ConfigureDbContext<LibraryDbContext>(options => options.AddInterceptors(Waits));
            }));
        _ = _server.Server;
    }

    public async Task DisposeAsync()
    {
        if (_server is not null) await _server.DisposeAsync();
        await MigratedCopy.DropAsync("sqlite", _database);
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A browser without scripts.</summary>
    /// <param name="email">Whose; null for somebody signed out.</param>
    public async Task<HttpClient> OpenAsync(string? email)
    {
        var reader = _server!.CreateClient(new() { BaseAddress = new Uri("http://localhost"), AllowAutoRedirect = true });
        if (email is null) return reader;
        var form = await reader.GetStringAsync(new Uri("/account/sign-in", UriKind.Relative));
        var fields = HiddenField().Matches(form).DistinctBy(match => match.Groups[1].Value)
            .ToDictionary(match => match.Groups[1].Value, match => WebUtility.HtmlDecode(match.Groups[2].Value));
        (fields["Email"], fields["Password"]) = (email, Phrase);
        using var content = new FormUrlEncodedContent(fields);
        using var answer = await reader.PostAsync(new Uri("/account/sign-in", UriKind.Relative), content);
        Assert.DoesNotContain("/account", answer.RequestMessage!.RequestUri!.AbsolutePath, StringComparison.Ordinal);
        return reader;
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"")]
    private static partial Regex HiddenField();

    private sealed class Faults : ILogger
    {
        private readonly List<string> _said = [];

        public string Take()
        {
            lock (_said)
            {
                var all = string.Join('\n', _said);
                _said.Clear();
                return all;
            }
        }

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Error;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (logLevel < LogLevel.Error) return;
            lock (_said) _said.Add($"{formatter(state, exception)} {exception}");
        }
    }

    private sealed class ToFaults(Faults faults) : ILoggerProvider
    {
        public ILogger CreateLogger(string categoryName) => faults;

        public void Dispose()
        {
        }
    }
}
