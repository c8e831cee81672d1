using System.Diagnostics;
using System.Text.Json;
using LibraryDesk.Desk.Calendar;
using LibraryDesk.Web.Features.Notices;

namespace LibraryDesk.Web.Tests.Notices;

/// <summary>The feed against RFC 5545, read back by another parser: Debian's python3-icalendar.</summary>
public sealed class CalendarFeedTests
{
    private const string Python = "/usr/bin/python3";

    private static readonly CalendarView View = new(
        new DateTimeOffset(2026, 8, 1, 12, 0, 0, TimeSpan.Zero),
        [
            new CalendarEntry("season-12-1-flowering", new DateOnly(2026, 8, 31), "Case 12: in flower yet?", "“Pepper; the blue, long one” with a back\\slash, ñ and a line that is far longer than the seventy-five octets after which a content line is folded.", "/cases/12/look"),
            new CalendarEntry("seed-3", new DateOnly(2026, 11, 30), "Seed hoped for: ‘Ferryman’s Lamp’", "Save from several plants.", "/p/Q26-0001-N"),
        ]);

    // RFC 5545, 3.1: lines end in CRLF and are at most 75 octets long.
    [Fact]
    public void Lines_are_folded_and_end_as_the_standard_says()
    {
        var text = CalendarFeed.Write(View, "Quillbrook", "https://desk.example.org");

        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\n", text.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.All(text.Split("\r\n"), line => Assert.True(System.Text.Encoding.UTF8.GetByteCount(line) <= 75, line));
        // 3.6: these are required.
        Assert.Contains("\r\nVERSION:2.0\r\n", text, StringComparison.Ordinal);
        Assert.Contains("\r\nPRODID:", text, StringComparison.Ordinal);
        Assert.Equal(2, text.Split("DTSTAMP:20260801T120000Z").Length - 1);
    }

    [SkippableFact]
    public async Task Another_parser_reads_the_same_days_and_words()
    {
        Skip.IfNot(File.Exists(Python) && await RunAsync("import icalendar", "") is not null, "python3-icalendar (Debian) is not on this machine.");
        const string Read = """
            import sys, json, icalendar
            calendar = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
            print(json.dumps([[str(e["UID"]), e["DTSTART"].dt.isoformat(), str(e["SUMMARY"]), str(e["DESCRIPTION"]), str(e["URL"])] for e in calendar.walk("VEVENT")]))
            """;

        var events = JsonSerializer.Deserialize<string[][]>((await RunAsync(Read, CalendarFeed.Write(View, "Quillbrook", "https://desk.example.org")))!)!;

        Assert.Equal(2, events.Length);
        foreach (var entry in View.Entries)
        {
            Assert.Contains(events, e => e.SequenceEqual([
                $"{entry.Id}@desk.example.org", entry.Day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), entry.Heading,
                $"{entry.Text}\nhttps://desk.example.org{entry.Address}", $"https://desk.example.org{entry.Address}"]));
        }
    }

    /// <summary>What the script prints; null when it fails.</summary>
    private static async Task<string?> RunAsync(string script, string input)
    {
        using var process = Process.Start(new ProcessStartInfo(Python, ["-c", script]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, StandardInputEncoding = new System.Text.UTF8Encoding(false) })!;
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? output : null;
    }
}
