using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using LibraryDesk.TestServers;

namespace LibraryDesk.Benchmarks.Serving;

/// <summary>
/// The time of whole pages, from request to last byte over loopback, on the demo library of a Release server with one reader at a time.
/// The peer of the same run is the style sheet, which the same server sends without a database or a page to draw.
/// </summary>
internal static partial class ServeBenchmark
{
    private const int WarmUp = 100;
    private const int Requests = 300;

    /// <summary>Prints a Markdown table for each database.</summary>
    public static async Task RunAsync(TextWriter output)
    {
        foreach (var database in new[] { "sqlite", "postgres" })
        {
            await using var server = await DeskServer.StartAsync(database, "--demo");
            await server.SaysAsync("member ");
            await output.WriteLineAsync($"\n{database}\n\n| who | page | KiB | median ms | 95 % ms | times the style sheet |\n|---|---|---|---|---|---|");
            foreach (var (role, pages) in new[]
            {
                ("member", new[] { "/", "a case" }), ("volunteer", new[] { "/queue", "a review" }), ("librarian", new[] { "/lots", "a lot", "/loans" }),
            })
            {
                using var reader = await SignedInAsync(server, role);
                var sheet = await TimeAsync(reader, Link(await reader.GetStringAsync("/"), Sheet()));
                foreach (var page in pages)
                {
                    var path = page switch
                    {
                        "a case" => Link(await reader.GetStringAsync("/cases"), Case()),
                        "a review" => Link(await reader.GetStringAsync("/queue"), Review()),
                        "a lot" => Link(await reader.GetStringAsync("/lots"), Lot()),
                        _ => page,
                    };
                    var (median, high, bytes) = await TimeAsync(reader, path);
                    await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                        $"| {role} | {(path == page ? page : page + " (" + path + ")")} | {bytes / 1024.0:F0} | {median:F2} | {high:F2} | {median / sheet.Median:F1} |"));
                }
            }
        }
    }

    private static async Task<(double Median, double High, int Bytes)> TimeAsync(HttpClient reader, string path)
    {
        var bytes = 0;
        var times = new double[Requests];
        for (var i = -WarmUp; i < Requests; i++)
        {
            var start = Stopwatch.GetTimestamp();
            bytes = (await reader.GetByteArrayAsync(path)).Length;
            if (i >= 0) times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
        Array.Sort(times);
        return (times[Requests / 2], times[Requests * 95 / 100], bytes);
    }

    private static async Task<HttpClient> SignedInAsync(DeskServer server, string role)
    {
        var email = server.Console.Split('\n').Select(line => DemoPerson().Match(line)).First(match => match.Groups[2].Value == role).Groups[1].Value;
        var reader = new HttpClient { BaseAddress = new Uri(server.Address) };
        var form = await reader.GetStringAsync("/account/sign-in");
        var fields = HiddenField().Matches(form).DistinctBy(match => match.Groups[1].Value).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);
        fields[NamedField("mail").Match(form).Groups[1].Value] = email;
        fields[NamedField("assword").Match(form).Groups[1].Value] = DemoPhrase().Match(server.Console).Groups[1].Value;
        using var content = new FormUrlEncodedContent(fields);
        using var answer = await reader.PostAsync(new Uri("/account/sign-in", UriKind.Relative), content);
        answer.EnsureSuccessStatusCode();
        if (answer.RequestMessage!.RequestUri!.AbsolutePath.StartsWith("/account", StringComparison.Ordinal)) throw new InvalidOperationException($"{email} could not sign in.");
        return reader;
    }

    private static string Link(string page, Regex pattern) => pattern.Match(page) is { Success: true } match
        ? match.Groups[1].Value
        : throw new InvalidOperationException($"No link like {pattern} on the page.");

    private static Regex NamedField(string part) => new($"<input[^>]*name=\"([^\"]*{part}[^\"]*)\"", RegexOptions.None, TimeSpan.FromSeconds(1));

    [GeneratedRegex("href=\"([^\"]+\\.css[^\"]*)\"")]
    private static partial Regex Sheet();

    [GeneratedRegex("href=\"(/cases/[0-9]+)\"")]
    private static partial Regex Case();

    [GeneratedRegex("href=\"(/queue/[0-9]+)\"")]
    private static partial Regex Review();

    [GeneratedRegex("href=\"(/lots/[^\"/?]*[0-9][^\"/?]*)\"")]
    private static partial Regex Lot();

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex(@"([\w.+-]+@example\.org)\s+(\w+)")]
    private static partial Regex DemoPerson();

    [GeneratedRegex("the phrase \"([^\"]+)\"")]
    private static partial Regex DemoPhrase();
}
