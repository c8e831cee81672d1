using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.TestServers;
using LibraryDesk.Web.Features.Identify;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Web.Tests.Cases;

public sealed class IdentifyEndpointTests : IAsyncLifetime
{
    private TestLibrary _library = null!;
    private WebApplication _app = null!;

    public async Task InitializeAsync()
    {
        _library = await TestLibrary.CreateAsync("sqlite");
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Services.AddSingleton(_library.Act<GuideShelf>());
        builder.Services.AddIdentify();
        builder.Services.AddProblemDetails();
        _app = builder.Build();
        _app.UseRateLimiter();
        _app.MapIdentify();
        await _app.StartAsync();
    }

    public async Task DisposeAsync()
    {
        await _app.DisposeAsync();
        await _library.DisposeAsync();
    }

    // Common practice, no source: spots in the flower point to baccatum.
    [Fact]
    public async Task It_ranks_and_names_the_guide_version()
    {
        var body = await ReadAsync("""{"guide":"capsicum","case":"7","answers":[{"trait":"corolla_spots","state":"green-yellow"}]}""", HttpStatusCode.OK);
        Assert.Equal("7", body.GetProperty("case").GetString());
        Assert.Equal("capsicum-baccatum", body.GetProperty("candidates")[0].GetProperty("id").GetString());
        Assert.Equal("capsicum", body.GetProperty("guide").GetProperty("id").GetString());
        Assert.Equal(1, body.GetProperty("candidates").EnumerateArray().Sum(c => c.GetProperty("probability").GetDouble()), 9);
    }

    [Fact]
    public async Task Rows_of_one_look_mean_either_of_these_and_all_states_move_nothing()
    {
        var states = ARanking.Peppers.Guide.FindTrait("corolla_spots")!.States;
        var rows = string.Join(',', states.Select(s => $$"""{"trait":"corolla_spots","state":"{{s.Id}}"}"""));
        var all = await ReadAsync($$"""{"guide":"capsicum","answers":[{{rows}}]}""", HttpStatusCode.OK);
        var none = await ReadAsync("""{"guide":"capsicum","answers":[]}""", HttpStatusCode.OK);
        Assert.Equal(Rounded(none), Rounded(all));
    }

    [Theory]
    [InlineData("12")]
    [InlineData("\"12\"")]
    [InlineData("\"10..15\"")]
    [InlineData("\"10-15\"")]
    [InlineData("\">=10\"")]
    public async Task A_measure_is_a_number_or_a_range(string value) =>
        await ReadAsync($$"""{"guide":"capsicum","answers":[{"trait":"fruit_length_mm","value":{{value}}}]}""", HttpStatusCode.OK);

    [Fact]
    public async Task Parts_to_come_are_worth_waiting_for()
    {
        var body = await ReadAsync("""{"guide":"capsicum","answers":[],"parts":["leaves"]}""", HttpStatusCode.OK);
        Assert.All(body.GetProperty("bestNextLooks").EnumerateArray(), l => Assert.Equal("leaves", l.GetProperty("part").GetString()));
        Assert.NotEqual(0, body.GetProperty("worthWaitingFor").GetArrayLength());
    }

    [Fact]
    public async Task A_look_alike_that_harms_brings_its_caution()
    {
        var body = await ReadAsync("""{"guide":"capsicum","answers":[{"trait":"corolla_shape","state":"campanulate"},{"trait":"corolla_colour","state":"purple"},{"trait":"fruit_colour_mature","state":"purple-black"},{"trait":"fruit_shape","state":"almost round"}]}""", HttpStatusCode.OK);
        Assert.Contains(body.GetProperty("cautions").EnumerateArray(), c => c.GetProperty("candidate").GetString() == "atropa-bella-donna");
    }

    [Fact]
    public async Task Among_and_a_flat_prior_narrow_the_field()
    {
        var body = await ReadAsync("""{"guide":"capsicum","answers":[],"among":["capsicum-annuum","capsicum-baccatum"],"prior":"flat"}""", HttpStatusCode.OK);
        Assert.Equal([0.5, 0.5], body.GetProperty("candidates").EnumerateArray().Select(c => Math.Round(c.GetProperty("probability").GetDouble(), 9)));
    }

    [Theory]
    [InlineData("""{"guide":"capsicum","answers":[{"trait":"nope","state":"a"}]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[{"trait":"corolla_spots","state":"nope"}]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[],"parts":["roots"]}""", 400, "identify.parts")]
    [InlineData("""{"guide":"capsicum","answers":[],"version":"1999.1"}""", 404, "identify.no-version")]
    [InlineData("""{"guide":"capsicum","answers":[{"trait":"corolla_spots"}]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[{"trait":"fruit_length_mm","value":true}]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[{"trait":"fruit_length_mm","value":-1}]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[{"trait":"corolla_spots","state":"absent","sure":"very"}]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[null]}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum"}""", 400, "identify.answers")]
    [InlineData("""{"guide":"capsicum","answers":[],"prior":"mine"}""", 400, "identify.prior")]
    [InlineData("""{"guide":"capsicum","answers":[],"among":["nobody"]}""", 400, "identify.among")]
    [InlineData("""{"answers":[]}""", 400, "identify.guide")]
    [InlineData("""{"guide":"tulips","answers":[]}""", 404, "identify.no-guide")]
    [InlineData("""{"guide":""", 400, "identify.body")]
    [InlineData("null", 400, "identify.body")]
    [InlineData("[]", 400, "identify.body")]
    public async Task What_cannot_be_ranked_is_a_problem_with_a_code(string body, int status, string code)
    {
        var problem = await ReadAsync(body, (HttpStatusCode)status);
        Assert.Equal(code, problem.GetProperty("code").GetString());
    }

    [Fact]
    public async Task A_fault_names_its_row()
    {
        var problem = await ReadAsync("""{"guide":"capsicum","answers":[{"trait":"corolla_spots","state":"absent"},{"trait":"nope","state":"a"}]}""", HttpStatusCode.BadRequest);
        Assert.True(problem.GetProperty("errors").TryGetProperty("answers[1]", out _));
    }

    [Fact]
    public async Task Another_media_type_is_told_so()
    {
        using var content = new StringContent("guide=capsicum", Encoding.UTF8, "application/x-www-form-urlencoded");
        using var answer = await _app.GetTestClient().PostAsync(new Uri("/api/v1/identify", UriKind.Relative), content);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
    }

    private static IEnumerable<string> Rounded(JsonElement body) => body.GetProperty("candidates").EnumerateArray()
        .Select(c => FormattableString.Invariant($"{c.GetProperty("id").GetString()} {c.GetProperty("probability").GetDouble():F12}"))
        // Ties come in the order of their last bit, which is not at stake here.
        .Order(StringComparer.Ordinal);

    private async Task<JsonElement> ReadAsync(string body, HttpStatusCode expected)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await _app.GetTestClient().PostAsync(new Uri("/api/v1/identify", UriKind.Relative), content);
        Assert.Equal(expected, answer.StatusCode);
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }
}
