using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>
/// Draws a stand-in for a photo, for the demo library. Every drawing bears the words "Drawing, not a photo", so that none is ever taken
/// for evidence. The same subject and seed give the same picture.
/// </summary>
public static class DrawnPhoto
{
    /// <summary>The words on every drawing.</summary>
    public const string Mark = "Drawing, not a photo";

    private const double Cell = 3.4;
    private const double BandHeight = 46;

    /// <summary>A JPEG of 960 by 720 pixels. Throws when the subject names a colour or shape that cannot be drawn.</summary>
    public static byte[] Draw(DrawnSubject subject, int seed)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var chance = new Random(seed);
        var sheet = new Sketch(Ground(subject.Part, chance));
        switch (subject.Part)
        {
            case DrawnPart.Plant: PlantDrawing.Plant(sheet, subject, chance); break;
            case DrawnPart.Flower: FlowerDrawing.Face(sheet, subject, chance); break;
            case DrawnPart.Fruit: FruitDrawing.OnRuler(sheet, subject, chance); break;
            case DrawnPart.CutFruit: FruitDrawing.Cut(sheet, subject, chance); break;
            case DrawnPart.Seeds: SeedDrawing.OnRuler(sheet, subject, chance); break;
            case DrawnPart.Leaf: LeafDrawing.Close(sheet, subject, chance); break;
            case DrawnPart.Seedlings: PlantDrawing.Tray(sheet, subject, chance); break;
            case DrawnPart.Berries: PlantDrawing.Nightshade(sheet, subject, chance); break;
            default: throw new ArgumentOutOfRangeException(nameof(subject));
        }
        WriteMark(sheet);
        using var picture = sheet.Finish();
        using var jpeg = new MemoryStream();
        picture.Save(jpeg, new JpegEncoder { Quality = 88 });
        return jpeg.ToArray();
    }

    private static Func<double, Rgb24> Ground(DrawnPart part, Random chance)
    {
        var paper = part is DrawnPart.Fruit or DrawnPart.CutFruit or DrawnPart.Seeds or DrawnPart.Leaf;
        var tone = paper ? Tints.Paper : new Rgb24((byte)(150 + chance.Next(30)), (byte)(172 + chance.Next(20)), (byte)(160 + chance.Next(30)));
        return y => Sketch.Shade(tone, 1.06 - (0.14 * y / Sketch.Height));
    }

    private static void WriteMark(Sketch sheet)
    {
        const double top = Sketch.Height - BandHeight;
        sheet.Fill([new(0, top), new(Sketch.Width, top), new(Sketch.Width, Sketch.Height), new(0, Sketch.Height)], Sketch.Flat(new Rgb24(255, 255, 255)));
        Lettering.Write(sheet, Mark, new Dot((Sketch.Width - Lettering.WidthOf(Mark, Cell)) / 2, top + 8), Cell, Tints.Ink);
    }
}
