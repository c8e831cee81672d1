using static LibraryDesk.Web.Shared.SharedText;

namespace LibraryDesk.Web.Shared.Frames;

/// <summary>One stem of a row of growth stages or plant parts.</summary>
/// <param name="Name">Its name, shown under the drawing.</param>
/// <param name="DrawingName">The drawing, e.g. "stage-flowering".</param>
/// <param name="There">For parts: whether the plant carries it.</param>
public sealed record Stem(string Name, string DrawingName, bool There = false)
{
    /// <summary>The five growth stages of a fruiting crop, in order, in the reader's language.</summary>
    public static IReadOnlyList<Stem> GrowthStages =>
    [
        new(Say["Seedling"], "stage-seedling"), new(Say["Leafy plant"], "stage-leafy"), new(Say["Flowering"], "stage-flowering"),
        new(Say["Green fruit"], "stage-green"), new(Say["Ripe fruit"], "stage-ripe"),
    ];
}
