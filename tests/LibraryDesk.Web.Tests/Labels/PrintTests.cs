using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Web.Features.Labels;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;

namespace LibraryDesk.Web.Tests.Labels;

/// <summary>
/// The way to paper: the sheet goes through Chromium's print to PDF, pdftoppm draws it at 150 dots an inch, and zbarimg, a decoder that is
/// not ours, reads the codes back. Skipped where one of the three is missing.
/// </summary>
public sealed partial class PrintTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("desk-labels").FullName;
    private readonly SeedLabel[] _labels = [.. Enumerable.Range(1, 4).Select(number => ALabel.Of(number: number, tested: ALabel.Tested((50, 47))))];
    private WebApplication _app = null!;

    public async Task InitializeAsync()
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { WebRootPath = WebRoot });
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        builder.Services.AddRazorComponents();
        _app = builder.Build();
        _app.UseStaticFiles(new StaticFileOptions { FileProvider = new PhysicalFileProvider(WebRoot) });
        _app.MapGet("/labels/sheet.css", (string format) => Results.Text(SheetStyle.Of(Wish(format)), "text/css"));
        _app.MapGet("/sheet/{format}", (string format, string? start, string? test) => new RazorComponentResult<LabelSheet>(new Dictionary<string, object?>
        {
            [nameof(LabelSheet.Labels)] = _labels,
            [nameof(LabelSheet.Wish)] = Wish(format, start, test),
            [nameof(LabelSheet.Settings)] = new LibrarySettingsRow { Name = "Quillbrook Seed Library", PublicAddress = "https://desk.example.org" },
            [nameof(LabelSheet.RequestAddress)] = "http://127.0.0.1",
        }));
        await _app.StartAsync();
    }

    public async Task DisposeAsync()
    {
        await _app.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [SkippableTheory]
    [InlineData("a4-cut", 8, 595.28, 841.89)]
    [InlineData("letter-cut", 8, 612, 792)]
    [InlineData("a4-14", 4, 595.28, 841.89)]
    [InlineData("letter-14", 4, 612, 792)]
    [InlineData("a4-8", 4, 595.28, 841.89)]
    [InlineData("letter-10", 4, 612, 792)]
    [InlineData("a4-stakes", 4, 595.28, 841.89)]
    [InlineData("letter-stakes", 4, 612, 792)]
    public async Task A_sheet_prints_on_one_page_of_its_paper_and_every_code_reads_back(string format, int codes, double width, double height)
    {
        var pdf = await PrintAsync(format);

        var facts = await RunAsync("pdfinfo", pdf);
        var size = facts.Split('\n').Single(line => line.StartsWith("Page size", StringComparison.Ordinal));
        Assert.Contains("Pages:           1\n", facts, StringComparison.Ordinal);
        // ISO 216 and ANSI/ASME Y14.1, in points of 1/72 inch.
        var points = PointsIn().Match(size);
        Assert.Equal(width, double.Parse(points.Groups[1].ValueSpan, CultureInfo.InvariantCulture), tolerance: 1);
        Assert.Equal(height, double.Parse(points.Groups[2].ValueSpan, CultureInfo.InvariantCulture), tolerance: 1);

        var read = (await ReadAsync(pdf)).Order(StringComparer.Ordinal).ToArray();
        var printed = _labels.Select(label => $"https://desk.example.org/p/{label.Code}").Order(StringComparer.Ordinal).ToArray();
        Assert.Equal(printed, read.Distinct());
        Assert.Equal(codes, read.Length);
    }

    [SkippableTheory]
    [InlineData("a4-14", 5)]
    [InlineData("letter-10", 4)]
    public async Task On_a_half_used_sheet_the_first_label_lies_on_the_first_free_place(string format, int start)
    {
        var pdf = await PrintAsync(format, $"?start={start}");
        var grid = LabelFormat.Of(format);
        for (var label = 0; label < _labels.Length; label++)
        {
            var (row, column) = Math.DivRem(start - 1 + label, grid.Columns);
            var place = (grid.Left + (column * (grid.LabelWidth + grid.ColumnGap)), grid.Top + (row * grid.LabelHeight), grid.LabelWidth, grid.LabelHeight);
            Assert.EndsWith(_labels[label].Code, Assert.Single(await ReadAsync(pdf, place)), StringComparison.Ordinal);
        }

        Assert.Equal(_labels.Length, (await ReadAsync(pdf)).Length);
    }

    [SkippableFact]
    public async Task A_test_print_spends_one_label_and_its_code_reads_back() =>
        Assert.EndsWith(_labels[0].Code, Assert.Single(await ReadAsync(await PrintAsync("a4-14", "?test=1"))), StringComparison.Ordinal);

    [GeneratedRegex(@"([\d.]+) x ([\d.]+)")]
    private static partial Regex PointsIn();

    private static string WebRoot { get; } = Path.Combine(Root(), "src", "LibraryDesk.Web", "wwwroot");

    private static LabelWish Wish(string format, string? start = null, string? test = null) => LabelWish.Read(format, start ?? "1", "0", "0", "packet", test, "no", null);

    private async Task<string> PrintAsync(string format, string query = "")
    {
        foreach (var tool in new[] { "chromium", "pdfinfo", "pdftoppm", "zbarimg" }) Skip.IfNot(IsThere(tool), $"{tool} is not installed: apt-get install chromium poppler-utils zbar-tools.");
        var address = _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        var pdf = Path.Combine(_folder, $"{format}.pdf");
        await RunAsync("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", $"--user-data-dir={_folder}/profile", "--virtual-time-budget=5000", $"--print-to-pdf={pdf}", $"{address}/sheet/{format}{query}");
        return pdf;
    }

    /// <param name="pdf">The print.</param>
    /// <param name="place">A part of the page: from the left, from the top, width and height in millimetres; null for all of it.</param>
    private async Task<string[]> ReadAsync(string pdf, (double Left, double Top, double Width, double Height)? place = null)
    {
        var picture = Path.Combine(_folder, Path.GetFileNameWithoutExtension(pdf));
        var part = place is { } cut ? new[] { "-x", Dots(cut.Left), "-y", Dots(cut.Top), "-W", Dots(cut.Width), "-H", Dots(cut.Height) } : [];
        await RunAsync("pdftoppm", ["-r", "150", "-png", "-singlefile", .. part, pdf, picture]);
        return (await RunAsync("zbarimg", "--raw", "-q", $"{picture}.png")).Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private static string Dots(double millimetres) => ((int)Math.Round(millimetres * 150 / 25.4)).ToString(CultureInfo.InvariantCulture);

    private static bool IsThere(string tool) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, tool)));

    private static async Task<string> RunAsync(string tool, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{tool} ended with {process.ExitCode}: {await error}");
        return output;
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "LibraryDesk.sln"))) folder = folder.Parent!;
        return folder.FullName;
    }
}
