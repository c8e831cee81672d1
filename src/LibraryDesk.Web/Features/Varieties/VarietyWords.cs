using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Features.Cases;
using static LibraryDesk.Web.Features.Varieties.VarietiesText;

namespace LibraryDesk.Web.Features.Varieties;

/// <summary>Words for variety records.</summary>
internal static class VarietyWords
{
    private static readonly Lazy<IReadOnlyList<CompiledGuide>> _guides = new(() => [.. BuiltInGuides.Ids.Select(BuiltInGuides.Open).Select(reading => reading?.Guide).OfType<CropGuide>().Select(CompiledGuide.Compile)]);

    public static string Breeding(BreedingStatus status) => status switch
    {
        BreedingStatus.Landrace => Say["Landrace"],
        BreedingStatus.OpenPollinated => Say["Open-pollinated"],
        BreedingStatus.F1Hybrid => Say["F1 hybrid"],
        _ => Say["Not known"],
    };

    /// <summary>The guide that describes a species, in the reader's language; null where none does.</summary>
    public static CropGuide? GuideOf(string? species) => species is not null && _guides.Value.FirstOrDefault(guide => guide.Guide.FindCandidate(species) is not null) is { } guide ? GuideBooks.Translate(guide).Guide : null;

    /// <summary>Traits as words: trait name and its states, in the guide's order.</summary>
    public static IReadOnlyList<(string Trait, string States)> Traits(CropGuide? guide, IReadOnlyList<(string Trait, string State)> traits) => guide is null
        ? []
        : [.. guide.Traits.Where(trait => traits.Any(pair => pair.Trait == trait.Id))
            .Select(trait => (trait.Name, AnswerWords.Or(traits.Where(pair => pair.Trait == trait.Id).Select(pair => trait.FindState(pair.State)?.Name ?? pair.State))))];
}
