using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Names of the species that the crop guides know, for lists to choose from and for showing.</summary>
public static class SpeciesNames
{
    private static readonly Lazy<Dictionary<string, string>> _known = new(() => Read(candidate => candidate.Name));
    private static readonly Lazy<Dictionary<string, string>> _common = new(() => Read(candidate => candidate.Common));
    private static readonly Lazy<Dictionary<string, string>> _crops = new(() => Read((_, guide) => guide.Crop));

    /// <summary>Species to choose from, "not known" first.</summary>
    public static IReadOnlyList<Choice> Choices => [new("", "Not known"), .. _known.Value.OrderBy(species => species.Value, StringComparer.Ordinal).Select(species => new Choice(species.Key, species.Value))];

    /// <summary>The scientific name of an id; an id no guide knows is written out as a name.</summary>
    public static string Of(string id)
    {
        if (_known.Value.TryGetValue(id, out var name)) return name;
        var words = id.Replace('-', ' ');
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>The everyday name of an id; null where the guides give none.</summary>
    public static string? CommonOf(string id) => _common.Value.GetValueOrDefault(id);

    /// <summary>The everyday name of the crop that an id belongs to; null where no guide has it.</summary>
    public static string? CropOf(string id) => _crops.Value.GetValueOrDefault(id);

    private static Dictionary<string, string> Read(Func<Candidate, string?> nameOf) => Read((candidate, _) => nameOf(candidate));

    private static Dictionary<string, string> Read(Func<Candidate, CropGuide, string?> nameOf)
    {
        var names = new Dictionary<string, string>();
        foreach (var guide in BuiltInGuides.Ids.Select(BuiltInGuides.Open).Select(reading => reading?.Guide))
        {
            foreach (var candidate in guide?.Candidates ?? [])
            {
                if (candidate.Kind == CandidateKind.Species && nameOf(candidate, guide!) is { } name) names[candidate.Id] = name;
            }
        }
        return names;
    }
}
