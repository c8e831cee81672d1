using System.Text.RegularExpressions;

namespace LibraryDesk.Web.Tests.Pages;

/// <summary>What everybody signed in finds first, in the demo library: one recall is open there, with holders not told yet.</summary>
public sealed partial class HomeTests(DemoLibrary library) : IClassFixture<DemoLibrary>
{
    [Theory]
    [InlineData("maren.oduya@example.org", false, false)]
    [InlineData("wren.castell@example.org", true, false)]
    [InlineData("hester.lorne@example.org", true, true)]
    public async Task Home_names_what_waits_for_the_role(string email, bool queue, bool recall)
    {
        using var reader = await library.OpenAsync(email);
        var todo = Todo().Match(await reader.GetStringAsync(new Uri("/", UriKind.Relative))).Value;
        Assert.Equal(queue, todo.Contains("href=\"/queue\"", StringComparison.Ordinal));
        Assert.Equal(recall, todo.Contains("href=\"/recalls/", StringComparison.Ordinal));
    }

    [Fact]
    public async Task As_many_cases_wait_at_home_as_in_the_queue()
    {
        using var reader = await library.OpenAsync("wren.castell@example.org");
        var home = Waiting().Match(await reader.GetStringAsync(new Uri("/", UriKind.Relative))).Groups[1].Value;
        Assert.Contains($"For you ({home})", await reader.GetStringAsync(new Uri("/queue", UriKind.Relative)), StringComparison.Ordinal);
    }

    [GeneratedRegex("<ul class=\"todo\".*?</ul>", RegexOptions.Singleline)]
    private static partial Regex Todo();

    [GeneratedRegex("(\\d+) cases wait for your opinion")]
    private static partial Regex Waiting();
}
