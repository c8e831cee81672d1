using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;

namespace LibraryDesk.Web.Start;

/// <summary>Says in one sentence when the server cannot listen where it was told to, before anything else is done.</summary>
public static class Listening
{
    /// <summary>Why the first of the settings' addresses cannot be listened on; null when all can.</summary>
    public static string? FaultOf(IConfiguration settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var urls = (settings[WebHostDefaults.ServerUrlsKey] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var endpoints = settings.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"]).OfType<string>();
        return urls.Concat(endpoints).Select(FaultOf).FirstOrDefault(fault => fault is not null);
    }

    /// <summary>Runs the server until it is told to stop. False when it could not listen after all, with the reason on the console.</summary>
    public static async Task<bool> RunAsync(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        try
        {
            await app.RunAsync();
            return true;
        }
        catch (IOException failure) when (failure.InnerException is AddressInUseException)
        {
            // Somebody took the address between the look and the start.
            await Console.Error.WriteLineAsync(InUse(string.Join(", ", app.Urls)));
            return false;
        }
    }

    private static string? FaultOf(string url)
    {
        BindingAddress address;
        try
        {
            address = BindingAddress.Parse(url);
        }
        catch (FormatException)
        {
            return $"{url} is not an address to listen on. Write it like http://127.0.0.1:5280.";
        }
        if (address.IsUnixPipe || address.IsNamedPipe || address.Port == 0) return null;
        try
        {
            var ip = Address(address.Host);
            using var look = new Socket(ip.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
            look.Bind(new IPEndPoint(ip, address.Port));
            return null;
        }
        catch (SocketException failure)
        {
            return failure.SocketErrorCode switch
            {
                SocketError.AddressAlreadyInUse => InUse(url),
                SocketError.AccessDenied => $"This account may not listen at {url}. Use a port above 1023, such as --urls http://127.0.0.1:5281.",
                SocketError.AddressNotAvailable => $"This machine does not have the address in {url}. Use one of its own, or http://127.0.0.1:5280 for this machine alone.",
                // Kestrel has the last word on what is stranger than that.
                _ => null,
            };
        }
    }

    private static string InUse(string url) =>
        $"Another program, perhaps this server already started, listens at {url}. Stop that one, or start this one elsewhere with --urls http://127.0.0.1:5281.";

    private static IPAddress Address(string host) => host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        ? IPAddress.Loopback
        : IPAddress.TryParse(host.Trim('[', ']'), out var ip) ? ip : IPAddress.IPv6Any;
}
