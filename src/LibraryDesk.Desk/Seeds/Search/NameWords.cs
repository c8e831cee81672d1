using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>The words by which a name is found: its own, its other names', its species', and how the library's record says it looks.</summary>
internal static class NameWords
{
    public const int OfName = 4;
    public const int OfSynonym = 3;
    public const int OfSpecies = 2;
    public const int OfTrait = 1;

    private static readonly Lazy<IReadOnlyList<CropGuide>> Guides = new(() => [.. BuiltInGuides.Ids.Select(BuiltInGuides.Open).Select(reading => reading?.Guide).OfType<CropGuide>()]);

    /// <summary>Each word once, with the most it counts.</summary>
    public static IReadOnlyDictionary<string, int> Of(SearchNameRow name, VarietyRow? variety)
    {
        var words = new Dictionary<string, int>(StringComparer.Ordinal);
        Add(words, name.Display, OfName);
        foreach (var synonym in (variety?.Synonyms ?? "").Split('\n')) Add(words, synonym, OfSynonym);
        Add(words, name.Species, OfSpecies);
        foreach (var guide in Guides.Value)
        {
            if (guide.FindCandidate(name.Species) is not { } candidate) continue;
            Add(words, candidate.Name, OfSpecies);
            Add(words, candidate.Common, OfSpecies);
            Add(words, guide.Crop, OfSpecies);
            foreach (var (trait, state) in Traits(variety?.Traits)) Add(words, guide.FindTrait(trait)?.FindState(state)?.Name ?? state, OfTrait);
        }

        if (variety is { Breeding: not BreedingStatus.NotKnown }) Add(words, BreedingWords(variety.Breeding), OfTrait);
        return words;
    }

    private static string BreedingWords(BreedingStatus breeding) => breeding switch
    {
        BreedingStatus.Landrace => "landrace",
        BreedingStatus.OpenPollinated => "open pollinated",
        _ => "f1 hybrid",
    };

    private static IEnumerable<(string Trait, string State)> Traits(string? lines) => (lines ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(line => line.Split('=', 2, StringSplitOptions.TrimEntries)).Where(pair => pair.Length == 2).Select(pair => (pair[0], pair[1]));

    private static void Add(Dictionary<string, int> words, string? text, int weight)
    {
        foreach (var word in SearchText.Words(text)) words[word] = Math.Max(words.GetValueOrDefault(word), weight);
    }
}
