using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>Which drawing stands for a part or a stage. Parts are told by the stage they come with, so that a guide for another crop needs no code.</summary>
internal static class PartDrawings
{
    public static string Of(Part part) => part.Id == "seed" ? "seeds-straw" : OfStage(part.Stage);

    public static string OfStage(string stage) => stage switch
    {
        "seedling" => "stage-seedling",
        "flowering" => "stage-flowering",
        "green-fruit" => "stage-green",
        "ripe-fruit" => "stage-ripe",
        _ => "stage-leafy",
    };

    /// <summary>The drawing of a photo place.</summary>
    public static string SlotOf(Part part) => part.Id == "seed" ? "slot-cut" : part.Stage switch
    {
        "flowering" => "slot-face",
        "green-fruit" or "ripe-fruit" => "slot-fruit",
        _ => "slot-leaf",
    };

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
}
