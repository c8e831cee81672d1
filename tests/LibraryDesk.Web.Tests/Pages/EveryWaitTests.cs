using System.Net;
using System.Text.RegularExpressions;

namespace LibraryDesk.Web.Tests.Pages;

/// <summary>Every page that can be reached by links can be drawn at any of its waits, for everybody.</summary>
public sealed partial class EveryWaitTests(DemoLibrary library) : IClassFixture<DemoLibrary>
{
    [Theory]
    [InlineData(null)]
    [InlineData("maren.oduya@example.org")]
    [InlineData("wren.castell@example.org")]
    [InlineData("hester.lorne@example.org")]
    public async Task A_page_is_drawn_at_whichever_wait_comes_first(string? email)
    {
        using var reader = await library.OpenAsync(email);
        var faults = new List<string>();
        var seen = new Dictionary<string, int>();
        var queued = new HashSet<string> { "/" };
        var waiting = new Queue<string>(queued);
        while (waiting.TryDequeue(out var path))
        {
            var pattern = string.Join('/', path.Split('?')[0].Split('/').Select(part => part.Any(char.IsDigit) || part.Length > 30 ? "*" : part));
            seen[pattern] = seen.GetValueOrDefault(pattern) + 1;
            if (seen[pattern] > 1) continue;
            var links = await DrawAtEveryWaitAsync(reader, path, faults);
            foreach (var link in links)
            {
                if (!link.Contains("sign-out", StringComparison.Ordinal) && queued.Add(link)) waiting.Enqueue(link);
            }
        }
        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.True(seen.Count > 8, $"Only {seen.Count} kinds of page were reached.");
    }

    private async Task<IEnumerable<string>> DrawAtEveryWaitAsync(HttpClient reader, string path, List<string> faults)
    {
        IEnumerable<string> links = [];
        var most = 1;
        for (var atOnce = 0; atOnce <= most; atOnce++)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Add(Waits.Header, atOnce.ToString(System.Globalization.CultureInfo.InvariantCulture));
            using var answer = await reader.SendAsync(request);
            if (answer.StatusCode >= HttpStatusCode.InternalServerError) faults.Add($"{path}, {atOnce} reads at once: {(int)answer.StatusCode}. {library.TakeFaults()}");
            if (answer.Content.Headers.ContentType?.MediaType != "text/html") break;
            // A page that was redirected or refused reads little; the page itself says how many reads there are to stop at.
            most = Math.Max(most, library.Waits.LastReads);
            if (atOnce > 0) continue;
            links = [.. Link().Matches(await answer.Content.ReadAsStringAsync()).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value))];
        }
        return links;
    }

    [GeneratedRegex("<a [^>]*?href=\"(/[^\"#]*)")]
    private static partial Regex Link();
}
