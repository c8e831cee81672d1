using System.Net;
using LibraryDesk.Web.Shared.Layout;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.TestHost;

namespace LibraryDesk.Web.Tests.Shared;

public sealed class ViewModeEndpointTests : IAsyncLifetime
{
    private WebApplication _app = null!;

    public async Task InitializeAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseTestServer();
        _app = builder.Build();
        _app.MapViewMode();
        await _app.StartAsync();
    }

    public async Task DisposeAsync() => await _app.DisposeAsync();

    [Fact]
    public async Task A_chosen_view_is_kept_on_the_device_and_leads_back()
    {
        using var answer = await PostAsync("sun", "/cases/214?tab=looks");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/cases/214?tab=looks", answer.Headers.Location?.OriginalString);
        Assert.Contains(answer.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("desk-view=sun;", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("auto")]
    [InlineData("pink")]
    public async Task Anything_else_hands_the_matter_back_to_the_device(string view)
    {
        using var answer = await PostAsync(view, "/");

        Assert.Contains(answer.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("desk-view=; expires=Thu, 01 Jan 1970", StringComparison.Ordinal));
    }

    // Open redirects: CWE-601.
    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("")]
    public async Task It_never_leads_off_the_site(string returnUrl)
    {
        using var answer = await PostAsync("dark", returnUrl);

        Assert.Equal("/", answer.Headers.Location?.OriginalString);
    }

    private Task<HttpResponseMessage> PostAsync(string view, string returnUrl) =>
        _app.GetTestClient().PostAsync(
            new Uri("/view-mode", UriKind.Relative),
            new FormUrlEncodedContent(new Dictionary<string, string> { ["view"] = view, ["returnUrl"] = returnUrl }));
}
