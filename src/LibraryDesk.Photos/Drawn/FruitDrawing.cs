using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>Pepper fruits in the shapes of the descriptor lists, with stalk and calyx.</summary>
internal static class FruitDrawing
{
    // Half widths along the fruit, as parts of its length; the first is at the stalk. Each shape ends in its tip at 1.
    private static readonly Dictionary<string, (double Along, double Half)[]> Shapes = new(StringComparer.Ordinal)
    {
        ["elongate"] = [(0, 0.05), (0.05, 0.085), (0.3, 0.1), (0.65, 0.08), (0.9, 0.04)],
        ["almost round"] = [(0, 0.2), (0.12, 0.4), (0.45, 0.52), (0.8, 0.38), (0.95, 0.16)],
        ["ellipsoid"] = [(0, 0.1), (0.12, 0.22), (0.45, 0.3), (0.8, 0.2), (0.95, 0.08)],
        ["triangular"] = [(0, 0.16), (0.06, 0.26), (0.3, 0.24), (0.65, 0.13), (0.92, 0.03)],
        ["campanulate"] = [(0, 0.14), (0.15, 0.24), (0.45, 0.34), (0.62, 0.52), (0.78, 0.3), (0.94, 0.18)],
        ["blocky"] = [(0, 0.26), (0.06, 0.38), (0.4, 0.4), (0.8, 0.36), (0.97, 0.24)],
        ["lantern"] = [(0, 0.2), (0.08, 0.34), (0.3, 0.4), (0.6, 0.32), (0.85, 0.12)],
        ["disc"] = [(0, 0.5), (0.2, 0.95), (0.5, 1.0), (0.8, 0.7), (0.95, 0.2)],
    };

    public static void OnRuler(Sketch sheet, DrawnSubject subject, Random chance)
    {
        var shape = Shape(subject.FruitShape);
        var widest = shape.Max(s => s.Half) * 2;
        var count = subject.Count > 0 ? subject.Count : 3;
        var unitsPerMm = Math.Min(8, Math.Min(760.0 / subject.FruitLengthMm, 480.0 / (count * widest * subject.FruitLengthMm * 1.15)));
        var step = 500.0 / count;
        for (var i = 0; i < count; i++)
        {
            var length = subject.FruitLengthMm * unitsPerMm * (1 - (i * 0.06) - (chance.NextDouble() * 0.04));
            var foot = new Dot(130, 50 + (step * (i + 0.5)));
            At(sheet, subject, foot, length, (chance.NextDouble() - 0.5) * 0.08, chance);
        }
        Ruler.Along(sheet, 40, 590, 880, unitsPerMm);
    }

    public static void Cut(Sketch sheet, DrawnSubject subject, Random chance)
    {
        var shape = Shape(subject.FruitShape);
        var length = Math.Min(700, 250 / shape.Max(s => s.Half));
        var foot = new Dot(480 - (length / 2), 320);
        var skin = Tints.Fruit(subject.FruitColour ?? "red");
        Stalk(sheet, subject, foot, length, 0);
        sheet.Fill(Outline(shape, foot, length, 0, 1), Sketch.Flat(skin));
        var flesh = Outline(shape, foot + new Dot(length * 0.03, 0), length * 0.93, 0, 0.86);
        sheet.Fill(flesh, Sketch.Round(Sketch.Shade(skin, 1.35), foot + new Dot(length * 0.4, -40), length * 0.7));
        sheet.Line(Sketch.Curve([foot + new Dot(length * 0.05, 0), foot + new Dot(length * 0.4, 12), foot + new Dot(length * 0.7, 0)], closed: false), length * 0.1, length * 0.02, new Rgb24(244, 234, 200));
        for (var i = 0; i < 22; i++)
        {
            var along = 0.1 + (chance.NextDouble() * 0.55);
            var across = (chance.NextDouble() - 0.5) * 1.1 * HalfAt(shape, along);
            SeedDrawing.At(sheet, foot + new Dot(along * length, across * length), length * 0.026, chance.NextDouble() * Math.Tau, Tints.Seed(subject.SeedColour));
        }
    }

    /// <summary>One fruit from its stalk end along <paramref name="turn"/>.</summary>
    public static void At(Sketch sheet, DrawnSubject subject, Dot foot, double length, double turn, Random chance)
    {
        var shape = Shape(subject.FruitShape);
        var tint = Tints.Fruit(subject.FruitColour ?? "red");
        var widest = shape.Max(s => s.Half) * length;
        sheet.Fill(Outline(shape, foot, length, turn, 1), Across(tint, foot, turn, widest));
        if (length > 60)
        {
            var shine = Outline(shape, foot + new Dot(length * 0.14, -widest * 0.42).Turned(turn), length * 0.5, turn, 0.16);
            sheet.Fill(shine, Sketch.Flat(Sketch.Shade(tint, 1.45)));
        }
        for (var i = 0; subject.Wrinkled && i < 9; i++)
        {
            var along = 0.12 + (chance.NextDouble() * 0.7);
            var half = HalfAt(shape, along) * 0.8;
            Dot P(double a, double b) => foot + new Dot((along + a) * length, b * length).Turned(turn);
            var from = (chance.NextDouble() - 0.5) * half;
            sheet.Line(Sketch.Curve([P(0, from), P(0.02, from + (half * 0.3)), P(-0.01, from + (half * 0.6))], closed: false), Math.Max(1, length * 0.008), 1, Sketch.Shade(tint, 0.66));
        }
        Stalk(sheet, subject, foot, length, turn);
    }

    // Rounded across its breadth, lit from above.
    private static Paint Across(Rgb24 tint, Dot foot, double turn, double widest) => (x, y) =>
    {
        var across = (new Dot(x, y) - foot).Turned(-turn).Y / widest;
        return Sketch.Shade(tint, 1.08 - (0.36 * across * across) - (0.12 * across));
    };

    private static void Stalk(Sketch sheet, DrawnSubject subject, Dot foot, double length, double turn)
    {
        var width = Math.Min(HalfAt(Shape(subject.FruitShape), 0.06) * length * 0.86, length * 0.2);
        Dot P(double x, double y) => foot + new Dot(x, y).Turned(turn);
        sheet.Line(Sketch.Curve([P(-length * 0.22, -width * 0.5), P(-length * 0.1, -width * 0.1), P(0, 0)], closed: false), width * 0.34, width * 0.5, Tints.Stem);
        sheet.Fill(Sketch.Curve([P(-width * 0.28, 0), P(-width * 0.1, -width * 0.7), P(width * 0.34, -width * 0.95), P(width * 0.26, -width * 0.4), P(width * 0.4, 0), P(width * 0.26, width * 0.4), P(width * 0.34, width * 0.95), P(-width * 0.1, width * 0.7)], closed: true), Sketch.Flat(Tints.Calyx));
        if (subject.CalyxRing) sheet.Line(Sketch.Curve([P(-width * 0.3, -width * 0.42), P(-width * 0.4, 0), P(-width * 0.3, width * 0.42)], closed: false), width * 0.2, width * 0.2, Sketch.Shade(Tints.Calyx, 0.7));
    }

    private static List<Dot> Outline((double Along, double Half)[] shape, Dot foot, double length, double turn, double breadth)
    {
        Dot P(double along, double across) => foot + new Dot(along * length, across * breadth * length).Turned(turn);
        var upper = shape.Select(s => P(s.Along, -s.Half));
        var lower = shape.Reverse().Select(s => P(s.Along, s.Half));
        return Sketch.Curve([.. upper, P(1, 0), .. lower], closed: true);
    }

    private static double HalfAt((double Along, double Half)[] shape, double along)
    {
        var next = Array.FindIndex(shape, s => s.Along >= along);
        if (next < 0) return shape[^1].Half * 0.6;
        if (next == 0) return shape[0].Half;
        var (a, b) = (shape[next - 1], shape[next]);
        return a.Half + ((along - a.Along) / (b.Along - a.Along) * (b.Half - a.Half));
    }

    private static (double Along, double Half)[] Shape(string id) =>
        Shapes.TryGetValue(id, out var shape) ? shape : throw new ArgumentException($"There is no fruit shape '{id}' to draw; known: {string.Join(", ", Shapes.Keys)}.", nameof(id));
}
