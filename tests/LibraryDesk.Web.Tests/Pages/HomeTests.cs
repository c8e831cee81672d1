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
    public async Task Seed_that_is_called_back_is_not_asked_for_at_home()
    {
        using var reader = await library.OpenAsync("maren.oduya@example.org");
        var todo = Todo().Match(await reader.GetStringAsync(new Uri("/", UriKind.Relative))).Value;
        var items = todo.Split("<li", StringSplitOptions.None)[1..];
        var recalled = Assert.Single(items, item => item.Contains("/p/Q26-0001-N", StringComparison.Ordinal));
        Assert.Same(items[0], recalled);
        Assert.Contains("is called back", recalled, StringComparison.Ordinal);
        Assert.DoesNotContain("hoped for", recalled, StringComparison.Ordinal);
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
