using LibraryDesk.Web.Start;
using Microsoft.Extensions.Configuration;

namespace LibraryDesk.Web.Tests.Start;

/// <summary>The demo's sign-ins are public, so nobody but this machine may reach it.</summary>
public sealed class LoopbackOnlyTests
{
    [Theory]
    [InlineData("http://127.0.0.1:5280", true)]
    [InlineData("http://localhost:5280;http://[::1]:5280", true)]
    [InlineData("http://127.0.0.1:5280;http://0.0.0.0:5281", false)]
    [InlineData("http://*:5280", false)]
    [InlineData("http://+:80", false)]
    [InlineData("http://[::]:80", false)]
    [InlineData("http://192.168.1.7:80", false)]
    [InlineData("http://desk.example.org", false)]
    [InlineData("nonsense", false)]
    public void Every_address_must_be_a_loopback_address(string urls, bool holds) => Assert.Equal(holds, LoopbackOnly.HoldsFor(Settings(("urls", urls))));

    [Fact]
    public void Bare_ports_listen_to_everybody() => Assert.False(LoopbackOnly.HoldsFor(Settings(("http_ports", "8080"))));

    [Fact]
    public void An_endpoint_of_its_own_counts_too() =>
        Assert.False(LoopbackOnly.HoldsFor(Settings(("urls", "http://127.0.0.1:1"), ("Kestrel:Endpoints:Open:Url", "http://0.0.0.0:2"))));

    private static IConfiguration Settings(params (string Key, string Value)[] values) =>
        new ConfigurationBuilder().AddInMemoryCollection(values.Select(v => new KeyValuePair<string, string?>(v.Key, v.Value))).Build();
}
