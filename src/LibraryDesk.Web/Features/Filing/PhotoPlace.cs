using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Reading;
using static LibraryDesk.Web.Features.Filing.FilingText;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>A place for photos of one part.</summary>
/// <param name="Part">Part id, or "whole".</param>
/// <param name="Hint">How to take it, or what it would show.</param>
/// <param name="Photos">Kept at this look.</param>
internal sealed record PhotoPlace(string Part, string Name, string Hint, string Drawing, IReadOnlyList<PhotoRow> Photos)
{
    /// <summary>Places for what the plant carries, those first whose questions are still open.</summary>
    public static IReadOnlyList<PhotoPlace> For(CaseView view)
    {
        var guide = view.Guide.Guide;
        var answered = view.OwnAnswers.Where(a => a.Kind is AnswerKind.States or AnswerKind.Measure).Select(a => a.TraitId).ToHashSet();
        var photos = view.Latest.Photos.ToLookup(p => p.Part);
        var places = guide.Parts
            .Where(part => view.Latest.Parts.Contains(part.Id))
            .Select(part =>
            {
                var open = guide.Traits.Where(t => t.Asked && t.Part == part.Id && !answered.Contains(t.Id)).ToList();
                var place = new PhotoPlace(part.Id, part.Name, HintOf(part.Stage, part.Id), PartDrawings.SlotOf(guide, part), [.. photos[part.Id]]);
                return (place, open.Count);
            })
            .OrderByDescending(p => p.Count > 0)
            .Select(p => p.place);
        var whole = view.Case.Specimen switch
        {
            Specimen.FruitAlone => new PhotoPlace(AddPhoto.WholePlant, Say["All of it"], Say["Beside a coin or a ruler"], "slot-fruit", [.. photos[AddPhoto.WholePlant]]),
            Specimen.SeedsAlone => new PhotoPlace(AddPhoto.WholePlant, Say["All seeds"], Say["On white paper, beside a ruler"], "slot-cut", [.. photos[AddPhoto.WholePlant]]),
            _ => new PhotoPlace(AddPhoto.WholePlant, Say["Whole plant"], Say["Step back until it fits"], "slot-whole", [.. photos[AddPhoto.WholePlant]]),
        };
        return [whole, .. places];
    }

    private static string HintOf(string stage, string part) => part == "seed" ? Say["Dry, on white paper; gloves on"] : stage switch
    {
        "flowering" => Say["Straight into an open flower, then one from the side"],
        "green-fruit" => Say["On the plant, as it hangs"],
        "ripe-fruit" => Say["With its stalk and cap"],
        _ => Say["One leaf, both sides"],
    };
}
