using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>A pepper leaf: ovate, pointed, with arching side veins; hairs only where asked for.</summary>
internal static class LeafDrawing
{
    public static void Close(Sketch sheet, DrawnSubject subject, Random chance)
    {
        Leaf(sheet, new Dot(110, 380), 720, -0.12, Tints.Leaf(subject.Foliage), subject.Hairy, chance);
        Ruler.Along(sheet, 40, 590, 880, 8);
    }

    /// <summary>A leaf from its base along <paramref name="turn"/>.</summary>
    public static void Leaf(Sketch sheet, Dot foot, double length, double turn, Rgb24 tint, bool hairy, Random chance)
    {
        var breadth = 0.21 + (chance.NextDouble() * 0.04);
        Dot P(double along, double across) => foot + new Dot(along * length, across * length).Turned(turn);
        sheet.Line([foot, P(0.14, 0)], length * 0.018, length * 0.014, Sketch.Shade(tint, 1.15));
        var edge = Sketch.Curve(
            [P(0.12, 0), P(0.24, -breadth * 0.8), P(0.42, -breadth), P(0.68, -breadth * 0.62), P(0.99, 0), P(0.68, breadth * 0.62), P(0.42, breadth), P(0.24, breadth * 0.8)], closed: true);
        sheet.Fill(edge, Sketch.Round(tint, P(0.4, -0.06), length * 0.5));
        var vein = Sketch.Shade(tint, 1.32);
        sheet.Line([P(0.12, 0), P(0.96, 0)], Math.Max(1, length * 0.011), 0.8, vein);
        for (var i = 0; i < 5; i++)
        {
            var s = 0.2 + (i * 0.13);
            var reach = breadth * (0.86 - (i * 0.13));
            foreach (var side in (int[])[-1, 1])
            {
                sheet.Line(Sketch.Curve([P(s, 0), P(s + 0.06, side * reach * 0.55), P(s + 0.15, side * reach * 0.92)], closed: false), Math.Max(0.8, length * 0.006), 0.6, vein);
            }
        }
        if (!hairy) return;
        for (var i = 0; i < length * 0.6; i++)
        {
            var p = edge[chance.Next(edge.Count)];
            var inner = chance.NextDouble() < 0.6 ? 1 - (chance.NextDouble() * 0.7) : 1;
            var middle = P(0.45, 0);
            var at = middle + ((p - middle) * inner);
            sheet.Line([at, at + new Dot((chance.NextDouble() - 0.5) * 10, -4 - (chance.NextDouble() * 8))], 1, 0.6, new Rgb24(232, 238, 222));
        }
    }
}
