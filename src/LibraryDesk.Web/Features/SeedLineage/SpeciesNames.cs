using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.SeedLineage.SeedLineageText;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Names of the species that the crop guides know, for lists to choose from and for showing.</summary>
public static class SpeciesNames
{
    private static readonly Lazy<Dictionary<string, (CropGuide Guide, Candidate Candidate)>> _known = new(Read);

    /// <summary>Species to choose from, "not known" first.</summary>
    public static IReadOnlyList<Choice> Choices => [new("", Say["Not known"]), .. _known.Value.Values.Select(known => new Choice(known.Candidate.Id, known.Candidate.Name)).OrderBy(species => species.Label, StringComparer.Ordinal)];

    /// <summary>The scientific name of an id; an id no guide knows is written out as a name.</summary>
    public static string Of(string id)
    {
        if (_known.Value.TryGetValue(id, out var known)) return known.Candidate.Name;
        var words = id.Replace('-', ' ');
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>The everyday name of an id in the reader's language; null where the guides give none.</summary>
    public static string? CommonOf(string id) =>
        _known.Value.TryGetValue(id, out var known) && known.Candidate.Common is { } name ? GuideBooks.Say(known.Guide.Id, name) : null;

    /// <summary>The everyday name of the crop that an id belongs to, in the reader's language; null where no guide has it.</summary>
    public static string? CropOf(string id) => _known.Value.TryGetValue(id, out var known) ? GuideBooks.Say(known.Guide.Id, known.Guide.Crop) : null;

    private static Dictionary<string, (CropGuide Guide, Candidate Candidate)> Read()
    {
        var species = new Dictionary<string, (CropGuide Guide, Candidate Candidate)>();
        foreach (var guide in BuiltInGuides.Ids.Select(BuiltInGuides.Open).Select(reading => reading?.Guide).OfType<CropGuide>())
        {
            foreach (var candidate in guide.Candidates.Where(c => c.Kind == CandidateKind.Species)) species[candidate.Id] = (guide, candidate);
        }
        return species;
    }
}
