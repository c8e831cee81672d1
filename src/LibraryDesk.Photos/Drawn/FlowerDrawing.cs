using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>A pepper flower: joined lobes, spots at their base, anthers round the style.</summary>
internal static class FlowerDrawing
{
    public static void Face(Sketch sheet, DrawnSubject subject, Random chance)
    {
        for (var i = 0; i < 5; i++)
        {
            var at = new Dot(120 + (chance.NextDouble() * 720), 80 + (chance.NextDouble() * 520));
            LeafDrawing.Leaf(sheet, at, 320, chance.NextDouble() * Math.Tau, Tints.Leaf(subject.Foliage), subject.Hairy, chance);
        }
        At(sheet, subject, new Dot(480, 340), 230, chance);
    }

    /// <summary>A flower of the given radius; small ones leave the fine parts out.</summary>
    public static void At(Sketch sheet, DrawnSubject subject, Dot centre, double radius, Random chance)
    {
        var corolla = subject.Corolla ?? "white";
        var tint = Tints.Flower(corolla);
        var start = chance.NextDouble() * Math.Tau;
        var fine = radius > 60;
        for (var i = 0; i < subject.Petals; i++)
        {
            var turn = start + (i * Math.Tau / subject.Petals) + ((chance.NextDouble() - 0.5) * 0.08);
            var half = 2.5 / subject.Petals;
            Dot P(double along, double across) => centre + new Dot(along * radius, across * half * radius).Turned(turn);
            var lobe = Sketch.Curve([P(0, 0), P(0.35, -0.75), P(0.66, -0.62), P(0.98, -0.06), P(0.98, 0.06), P(0.66, 0.62), P(0.35, 0.75)], closed: true);
            if (fine) sheet.Fill(lobe.Select(p => p + ((p - centre) * 0.012)).ToList(), Sketch.Flat(Sketch.Shade(tint, 0.72)));
            sheet.Fill(lobe, LobePaint(corolla, tint, centre, radius));
            if (fine) sheet.Line([P(0.2, 0), P(0.86, 0)], 2.4, 1, Sketch.Shade(tint, 0.88));
            if (subject.Spots is { } spots)
            {
                var spot = Sketch.Flat(Tints.Spot(spots));
                sheet.Ellipse(P(0.4, -0.26), radius * 0.085, radius * 0.05, turn + 0.2, spot);
                sheet.Ellipse(P(0.4, 0.26), radius * 0.085, radius * 0.05, turn - 0.2, spot);
            }
        }
        Middle(sheet, subject, centre, radius, start);
    }

    private static void Middle(Sketch sheet, DrawnSubject subject, Dot centre, double radius, double start)
    {
        sheet.Ellipse(centre, radius * 0.2, radius * 0.2, 0, Sketch.Flat(new Rgb24(206, 216, 170)));
        var anther = Tints.Anther(subject.Anthers);
        for (var i = 0; i < subject.Petals; i++)
        {
            var turn = start + ((i + 0.5) * Math.Tau / subject.Petals);
            var at = centre + new Dot(radius * 0.22, 0).Turned(turn);
            sheet.Line([centre, at], radius * 0.03, radius * 0.03, new Rgb24(236, 236, 226));
            sheet.Ellipse(at, radius * 0.115, radius * 0.058, turn, Sketch.Round(anther, at - new Dot(radius * 0.05, radius * 0.05), radius * 0.16));
        }
        sheet.Ellipse(centre, radius * 0.05, radius * 0.05, 0, Sketch.Flat(new Rgb24(182, 204, 120)));
    }

    private static Paint LobePaint(string corolla, Rgb24 tint, Dot centre, double radius) => (x, y) =>
    {
        var far = Math.Sqrt(((x - centre.X) * (x - centre.X)) + ((y - centre.Y) * (y - centre.Y))) / radius;
        if (corolla == "purple with white base" && far < 0.45) return Tints.Flower("white");
        if (corolla == "white with purple margin" && far > 0.8) return Tints.Flower("purple");
        return Sketch.Shade(tint, 0.9 + (0.12 * far));
    };
}
