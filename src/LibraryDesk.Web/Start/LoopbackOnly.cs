using System.Net;

namespace LibraryDesk.Web.Start;

/// <summary>Tells whether the server can be reached from this machine alone.</summary>
public static class LoopbackOnly
{
    /// <summary>True when every address in the settings is a loopback address.</summary>
    public static bool HoldsFor(IConfiguration settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var urls = (settings[WebHostDefaults.ServerUrlsKey] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var endpoints = settings.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"] ?? "");
        // Bare ports listen on every address; they count where no address is given.
        var ports = urls.Length == 0 && (settings[WebHostDefaults.HttpPortsKey] is { Length: > 0 } || settings[WebHostDefaults.HttpsPortsKey] is { Length: > 0 });
        return !ports && urls.Concat(endpoints).All(IsLoopback);
    }

    /// <summary>True for localhost, 127.x.x.x, [::1] and sockets in the file system; false for what cannot be read.</summary>
    public static bool IsLoopback(string url)
    {
        try
        {
            var address = BindingAddress.Parse(url);
            return address.IsUnixPipe || address.IsNamedPipe
                || address.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
                || (IPAddress.TryParse(address.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
        }
        catch (FormatException)
        {
            return false;
        }
    }
}
