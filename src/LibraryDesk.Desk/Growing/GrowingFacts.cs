using System.Text.Json;

namespace LibraryDesk.Desk.Growing;

/// <summary>
/// Figures for sowing, keeping apart and saving seed, read once from the file that ships with the desk.
/// A species without rows of its own on a topic takes those of its genus, then those for all crops.
/// </summary>
public static class GrowingFacts
{
    private const string Everything = "all";

    private static readonly Lazy<GrowingFile> _shipped = new(ReadShipped);

    /// <summary>Every fact of the file, in its order.</summary>
    public static IReadOnlyList<GrowingFact> All => _shipped.Value.Facts;

    /// <summary>Version of the file, such as "2026.1".</summary>
    public static string Version => _shipped.Value.Version;

    /// <summary>
    /// The topics known for a species ("capsicum-annuum") or a genus ("capsicum"), in the order in which a grower meets them,
    /// named in the reader's language.
    /// Empty when the file holds nothing for the species or its genus.
    /// </summary>
    public static IReadOnlyList<GrowingTopic> For(string taxonId)
    {
        ArgumentNullException.ThrowIfNull(taxonId);
        var file = _shipped.Value;
        var genus = taxonId.Split('-')[0];
        if (!file.Facts.Any(f => f.Taxon == taxonId || f.Taxon == genus)) return [];

        var topics = new List<GrowingTopic>();
        foreach (var topic in file.Topics)
        {
            var rows = Rows(file, topic.Id, taxonId) ?? Rows(file, topic.Id, genus) ?? Rows(file, topic.Id, Everything);
            if (rows is null) continue;
            var group = file.Groups.First(g => g.Id == topic.Group).Name;
            topics.Add(new GrowingTopic(topic.Id, GrowingFileText.Words[topic.Name], GrowingFileText.Words[group], rows[0].Taxon, rows));
        }

        return topics;
    }

    /// <summary>One topic for a taxon, or null when nothing is known of it.</summary>
    public static GrowingTopic? For(string taxonId, string topicId) => For(taxonId).FirstOrDefault(t => t.Id == topicId);

    /// <summary>The name of a topic in the reader's language; null for an id that the file does not have.</summary>
    internal static string? NameOf(string topicId) =>
        _shipped.Value.Topics.FirstOrDefault(topic => topic.Id == topicId) is { } topic ? GrowingFileText.Words[topic.Name] : null;

    private static List<GrowingFact>? Rows(GrowingFile file, string topic, string taxon)
    {
        var rows = file.Facts.Where(f => f.Topic == topic && f.Taxon == taxon).ToList();
        return rows.Count == 0 ? null : rows;
    }

    private static GrowingFile ReadShipped()
    {
        using var stream = typeof(GrowingFacts).Assembly.GetManifestResourceStream("growing.json")
            ?? throw new InvalidOperationException("growing.json is not embedded in this assembly.");
        return JsonSerializer.Deserialize<GrowingFile>(stream, JsonSerializerOptions.Web)
            ?? throw new InvalidOperationException("growing.json is empty.");
    }

    private sealed record GrowingFile(string Version, IReadOnlyList<NamedGroup> Groups, IReadOnlyList<NamedTopic> Topics, IReadOnlyList<GrowingFact> Facts);

    private sealed record NamedGroup(string Id, string Name);

    private sealed record NamedTopic(string Id, string Name, string Group);
}
