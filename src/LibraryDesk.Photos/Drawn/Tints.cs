using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>Colours for the drawings, by the guide's state ids.</summary>
internal static class Tints
{
    public static readonly Rgb24 Ink = new(30, 40, 36);
    public static readonly Rgb24 Paper = new(226, 229, 222);
    public static readonly Rgb24 Stem = new(104, 140, 70);
    public static readonly Rgb24 Soil = new(86, 66, 50);
    public static readonly Rgb24 Calyx = new(88, 132, 60);

    private static readonly Dictionary<string, Rgb24> Flowers = new(StringComparer.Ordinal)
    {
        ["white"] = new(246, 246, 240), ["greenish white"] = new(226, 236, 208), ["light yellow"] = new(240, 236, 180), ["yellow"] = new(240, 214, 60),
        ["purple"] = new(126, 78, 160), ["purple with white base"] = new(126, 78, 160), ["white with purple margin"] = new(240, 236, 246),
    };

    private static readonly Dictionary<string, Rgb24> Spots = new(StringComparer.Ordinal)
    {
        ["green-yellow"] = new(150, 172, 52), ["yellow"] = new(214, 190, 60), ["tan"] = new(182, 146, 92), ["purple"] = new(116, 62, 140), ["green"] = new(96, 150, 70), ["white"] = new(250, 250, 250),
    };

    private static readonly Dictionary<string, Rgb24> Anthers = new(StringComparer.Ordinal)
    {
        ["yellow"] = new(230, 196, 70), ["cream"] = new(236, 226, 180), ["blue"] = new(84, 104, 168), ["pale blue"] = new(140, 160, 204),
        ["blue-grey"] = new(118, 128, 154), ["purple"] = new(94, 62, 132), ["green"] = new(120, 150, 90), ["white"] = new(244, 244, 240),
    };

    private static readonly Dictionary<string, Rgb24> Fruits = new(StringComparer.Ordinal)
    {
        ["green"] = new(86, 142, 62), ["light green"] = new(160, 194, 110), ["dark green"] = new(46, 92, 48), ["purple"] = new(92, 52, 110), ["purple-black"] = new(50, 34, 56),
        ["black"] = new(42, 38, 44), ["ivory"] = new(238, 230, 196), ["white"] = new(244, 240, 226), ["cream"] = new(240, 226, 178), ["light yellow"] = new(242, 226, 130),
        ["yellow"] = new(244, 204, 50), ["yellow-green"] = new(190, 204, 80), ["orange"] = new(238, 140, 40), ["orange-red"] = new(226, 88, 40), ["red"] = new(200, 38, 36), ["brown"] = new(112, 66, 44), ["pink"] = new(232, 150, 150),
    };

    private static readonly Dictionary<string, Rgb24> SeedCoats = new(StringComparer.Ordinal)
    {
        ["straw"] = new(228, 204, 140), ["brown"] = new(120, 84, 52), ["black"] = new(48, 40, 38),
    };

    private static readonly Dictionary<string, Rgb24> Leaves = new(StringComparer.Ordinal)
    {
        ["green"] = new(84, 132, 66), ["purple"] = new(92, 66, 96), ["variegated"] = new(150, 176, 120),
    };

    public static Rgb24 Flower(string id) => Of(Flowers, id);

    public static Rgb24 Spot(string id) => Of(Spots, id);

    public static Rgb24 Anther(string id) => Of(Anthers, id);

    public static Rgb24 Fruit(string id) => Of(Fruits, id);

    public static Rgb24 Seed(string id) => Of(SeedCoats, id);

    public static Rgb24 Leaf(string id) => Of(Leaves, id);

    private static Rgb24 Of(Dictionary<string, Rgb24> tints, string id) =>
        tints.TryGetValue(id, out var tint) ? tint : throw new ArgumentException($"There is no colour '{id}' to draw with; known: {string.Join(", ", tints.Keys)}.", nameof(id));
}
