using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Marks;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>
/// Which drawing stands for a part or a stage. A crop's own drawing is found by its name (part-cucurbita-seed, stage-cucurbita-flowering);
/// a crop without one borrows the pepper's, told by the stage the part comes with, so that a new guide needs no code.
/// </summary>
internal static class PartDrawings
{
    public static string Of(CropGuide guide, Part part) =>
        Own("part", guide, part.Id) ?? Pepper(part) ?? (part.Id == "seed" ? "seeds-straw" : OfStage(guide, part.Stage));

    public static string OfStage(CropGuide guide, string stage) => Own("stage", guide, stage) ?? stage switch
    {
        "seedling" => "stage-seedling",
        "flowering" => "stage-flowering",
        "green-fruit" => "stage-green",
        "ripe-fruit" => "stage-ripe",
        _ => "stage-leafy",
    };

    /// <summary>The drawing of a photo place.</summary>
    public static string SlotOf(CropGuide guide, Part part) => Own("part", guide, part.Id) ?? (part.Id == "seed" ? "slot-cut" : part.Stage switch
    {
        "flowering" => "slot-face",
        "green-fruit" or "ripe-fruit" => "slot-fruit",
        _ => "slot-leaf",
    });

    /// <summary>The furthest stage among some parts, as its place in the guide's list; -1 for no parts.</summary>
    public static int StageReached(CropGuide guide, IReadOnlySet<string> parts) =>
        guide.Parts.Where(p => parts.Contains(p.Id)).Select(p => StageIndex(guide, p.Stage)).DefaultIfEmpty(-1).Max();

    public static int StageIndex(CropGuide guide, string stage)
    {
        for (var i = 0; i < guide.Stages.Count; i++)
        {
            if (guide.Stages[i].Id == stage) return i;
        }
        return -1;
    }

    private static string? Pepper(Part part) => $"part-{part.Id.Replace('_', '-')}" is var name && DrawingShapes.Find(name) is not null ? name : null;

    private static string? Own(string kind, CropGuide guide, string id) => $"{kind}-{guide.Id}-{id}" is var name && DrawingShapes.Find(name) is not null ? name : null;
}
