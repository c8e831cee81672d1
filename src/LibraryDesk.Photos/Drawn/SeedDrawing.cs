using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>Pepper seeds: flat, kidney-round, about 4 mm across (from memory).</summary>
internal static class SeedDrawing
{
    private const double UnitsPerMm = 20;

    public static void OnRuler(Sketch sheet, DrawnSubject subject, Random chance)
    {
        var count = subject.Count > 0 ? subject.Count : 14;
        for (var i = 0; i < count; i++)
        {
            var (column, row) = (i % 7, i / 7);
            var at = new Dot(120 + (column * 120) + ((chance.NextDouble() - 0.5) * 40), 130 + (row * 150) + ((chance.NextDouble() - 0.5) * 50));
            At(sheet, at, 2 * UnitsPerMm, chance.NextDouble() * Math.Tau, Tints.Seed(subject.SeedColour));
        }
        Ruler.Along(sheet, 40, 590, 880, UnitsPerMm);
    }

    /// <summary>One seed of the given radius.</summary>
    public static void At(Sketch sheet, Dot centre, double radius, double turn, Rgb24 tint)
    {
        Dot P(double x, double y) => centre + new Dot(x * radius, y * radius).Turned(turn);
        sheet.Ellipse(centre + new Dot(radius * 0.1, radius * 0.14), radius, radius * 0.9, turn, Sketch.Flat(Sketch.Shade(Tints.Paper, 0.82)));
        var coat = Sketch.Curve([P(-0.95, 0.1), P(-0.6, -0.7), P(0.1, -0.88), P(0.8, -0.5), P(0.98, 0.1), P(0.6, 0.72), P(0, 0.84), P(-0.5, 0.62), P(-0.72, 0.42)], closed: true);
        sheet.Fill(coat, Sketch.Round(tint, P(-0.2, -0.3), radius * 1.3));
        sheet.Line(Sketch.Curve([P(-0.5, 0.2), P(-0.2, -0.4), P(0.4, -0.3), P(0.45, 0.25)], closed: false), radius * 0.06, radius * 0.04, Sketch.Shade(tint, 0.78));
    }
}
