using System.Globalization;
using System.Net;
using System.Net.Sockets;
using LibraryDesk.Web.Start;
using Microsoft.Extensions.Configuration;

namespace LibraryDesk.Web.Tests.Start;

public class ListeningTests
{
    [Fact]
    public void A_port_another_program_has_is_told_in_one_sentence_with_what_to_do()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var url = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}");
        var fault = Listening.FaultOf(With(url));
        Assert.Contains(url, fault, StringComparison.Ordinal);
        Assert.Contains("--urls", fault, StringComparison.Ordinal);
        other.Stop();
        Assert.Null(Listening.FaultOf(With(url)));
    }

    [Theory]
    [InlineData("127.0.0.1:5280")]
    [InlineData("http://203.0.113.7:5280")]
    public void An_address_that_is_none_or_not_this_machines_is_told(string url) => Assert.NotNull(Listening.FaultOf(With(url)));

    [Theory]
    [InlineData("http://127.0.0.1:0")]
    [InlineData("")]
    public void What_can_be_listened_on_is_no_fault(string urls) => Assert.Null(Listening.FaultOf(With(urls)));

    private static IConfiguration With(string urls) => new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { ["urls"] = urls }).Build();
}
