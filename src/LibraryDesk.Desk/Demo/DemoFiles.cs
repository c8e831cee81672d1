using System.Globalization;
using System.Text.Json;

namespace LibraryDesk.Desk.Demo;

/// <summary>A person of the demo.</summary>
/// <param name="Show">Why somebody would sign in as this person; null for those not offered.</param>
internal sealed record DemoPerson(string Handle, string Name, string Role, string Email, DateTimeOffset Joined, string? Show);

/// <summary>The demo as its files tell it.</summary>
/// <param name="Settings">The library's settings.</param>
/// <param name="People">In the order they joined.</param>
/// <param name="Cases">Title, owner and the like, by the case's handle.</param>
/// <param name="Steps">All acts in the order of their times.</param>
internal sealed record DemoLibrary(
    JsonElement Settings, IReadOnlyList<DemoPerson> People, IReadOnlyDictionary<string, JsonElement> Cases, IReadOnlyList<DemoStep> Steps);

/// <summary>Reads the files of <c>seed-demo/</c>, which travel inside this assembly.</summary>
internal static class DemoFiles
{
    private const string Folder = "seed-demo/";

    public static DemoLibrary Read()
    {
        var files = typeof(DemoFiles).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .ToDictionary(name => name[Folder.Length..].Replace('\\', '/'), Parse);
        var people = files["people.json"].EnumerateArray().Select(Person).OrderBy(person => person.Joined).ToList();
        var cases = new Dictionary<string, JsonElement>(StringComparer.Ordinal);
        var steps = new List<DemoStep>();
        foreach (var (name, root) in files)
        {
            if (name is "varieties.json" or "guides.json" || name.StartsWith("seeds-", StringComparison.Ordinal)) steps.AddRange(root.EnumerateArray().Select(act => Step(act, null, name)));
            if (!name.StartsWith("cases/", StringComparison.Ordinal)) continue;
            var handle = root.GetProperty("case").GetString()!;
            cases.Add(handle, root);
            steps.AddRange(root.GetProperty("steps").EnumerateArray().Select(step => Step(step, handle, name)));
        }
        // A stable sort: acts of one minute stay in the order of their file.
        return new DemoLibrary(files["library.json"], people, cases, [.. steps.OrderBy(step => step.On)]);
    }

    private static JsonElement Parse(string resource)
    {
        using var stream = typeof(DemoFiles).Assembly.GetManifestResourceStream(resource)!;
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.Clone();
    }

    private static DemoPerson Person(JsonElement person)
    {
        string Text(string name) => person.GetProperty(name).GetString()!;
        return new DemoPerson(
            Text("handle"), Text("name"), Text("role"), Text("email"), Instant(Text("joined") + " 09:00"),
            person.TryGetProperty("show", out var show) ? show.GetString() : null);
    }

    private static DemoStep Step(JsonElement fields, string? inCase, string source) => new(
        Instant(fields.GetProperty("on").GetString()!),
        fields.GetProperty("do").GetString()!,
        fields.TryGetProperty("by", out var by) ? by.GetString() : null,
        inCase,
        source,
        fields);

    private static DateTimeOffset Instant(string text) =>
        DateTimeOffset.ParseExact(text, "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
