namespace LibraryDesk.Web.Shared.Frames;

/// <summary>One stem of a row of growth stages or plant parts.</summary>
/// <param name="Name">Its name, shown under the drawing.</param>
/// <param name="DrawingName">The drawing, e.g. "stage-flowering".</param>
/// <param name="There">For parts: whether the plant carries it.</param>
public sealed record Stem(string Name, string DrawingName, bool There = false)
{
    /// <summary>The five growth stages of a fruiting crop, in order.</summary>
    public static IReadOnlyList<Stem> GrowthStages { get; } =
    [
        new("Seedling", "stage-seedling"), new("Leafy plant", "stage-leafy"), new("Flowering", "stage-flowering"),
        new("Green fruit", "stage-green"), new("Ripe fruit", "stage-ripe"),
    ];
}
