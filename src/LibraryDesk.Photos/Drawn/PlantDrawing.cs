using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>Whole plants: a pepper in its pot, a tray of seedlings, a nightshade branch.</summary>
internal static class PlantDrawing
{
    public static void Plant(Sketch sheet, DrawnSubject subject, Random chance)
    {
        Pot(sheet);
        var leaf = Tints.Leaf(subject.Foliage);
        var fork = new Dot(480 + chance.Next(-12, 12), 400);
        sheet.Line(Sketch.Curve([new(480, 560), new(476, 480), fork], closed: false), 15, 11, Tints.Stem);
        var ends = new List<Dot>();
        for (var i = 0; i < 5; i++)
        {
            var end = fork + new Dot((i - 2) * 105 + chance.Next(-20, 20), -150 - (chance.NextDouble() * 130) + (Math.Abs(i - 2) * 40));
            var middle = (fork + end) * 0.5 + new Dot((i - 2) * 14, 16);
            sheet.Line(Sketch.Curve([fork, middle, end], closed: false), 9, 4, Tints.Stem);
            ends.Add(middle);
            ends.Add(end);
        }
        foreach (var end in ends)
        {
            for (var k = 0; k < 4; k++)
            {
                var turn = (chance.NextDouble() * Math.PI * 1.3) - 0.4 + (end.X < 480 ? Math.PI * 0.55 : 0);
                LeafDrawing.Leaf(sheet, end, 92 + (chance.NextDouble() * 46), turn, Sketch.Shade(leaf, 0.84 + (chance.NextDouble() * 0.3)), subject.Hairy, chance);
            }
        }
        foreach (var end in ends) Bear(sheet, subject, end, chance);
    }

    private static void Bear(Sketch sheet, DrawnSubject subject, Dot end, Random chance)
    {
        if (subject.FruitColour is not null && chance.NextDouble() < 0.85)
        {
            var length = Math.Clamp(subject.FruitLengthMm * 1.15, 26, 120);
            var turn = (subject.Erect ? -Math.PI / 2 : Math.PI / 2) + ((chance.NextDouble() - 0.5) * 0.4);
            FruitDrawing.At(sheet, subject, end + new Dot(chance.Next(-24, 24), subject.Erect ? -16 : 20), length, turn, chance);
        }
        if (subject.Corolla is not null && chance.NextDouble() < 0.6)
        {
            FlowerDrawing.At(sheet, subject, end + new Dot(chance.Next(-40, 40), chance.Next(-30, 30)), 24, chance);
        }
    }

    public static void Tray(Sketch sheet, DrawnSubject subject, Random chance)
    {
        var count = subject.Count > 0 ? Math.Min(subject.Count, 15) : 12;
        var leaf = Tints.Leaf(subject.Foliage);
        sheet.Fill([new(60, 60), new(900, 60), new(900, 640), new(60, 640)], Sketch.Flat(new Rgb24(58, 62, 64)));
        for (var i = 0; i < 15; i++)
        {
            var corner = new Dot(78 + (i % 5 * 164), 78 + (i / 5 * 186));
            sheet.Fill([corner, corner + new Dot(148, 0), corner + new Dot(148, 170), corner + new Dot(0, 170)], Sketch.Round(Tints.Soil, corner + new Dot(50, 40), 170));
            if (i >= count) continue;
            var middle = corner + new Dot(74 + chance.Next(-12, 12), 88 + chance.Next(-12, 12));
            var turn = chance.NextDouble() * Math.Tau;
            foreach (var side in (int[])[0, 1])
            {
                var at = middle + new Dot(34, 0).Turned(turn + (side * Math.PI));
                sheet.Ellipse(at, 33, 11, turn, Sketch.Round(Sketch.Shade(leaf, 1.12), at - new Dot(6, 6), 40));
                if (chance.NextDouble() < 0.8) LeafDrawing.Leaf(sheet, middle, 66, turn + (Math.PI / 2) + (side * Math.PI), leaf, subject.Hairy, chance);
            }
        }
    }

    public static void Nightshade(Sketch sheet, DrawnSubject subject, Random chance)
    {
        var stem = Sketch.Curve([new(120, 620), new(300, 430), new(520, 330), new(820, 200)], closed: false);
        sheet.Line(stem, 15, 7, Tints.Stem);
        for (var i = 0; i < 9; i++)
        {
            var at = stem[(i + 1) * (stem.Count - 2) / 10];
            LeafDrawing.Leaf(sheet, at, 190, (i % 2 == 0 ? -1.6 : 1.0) + ((chance.NextDouble() - 0.5) * 0.7), Sketch.Shade(Tints.Leaf(subject.Foliage), 0.82), subject.Hairy, chance);
        }
        for (var i = 0; i < 4; i++)
        {
            var at = stem[(i + 1) * (stem.Count - 2) / 5];
            var head = at + new Dot(60, 70);
            sheet.Line([at, head], 4, 3, Tints.Stem);
            if (i == 3)
            {
                FlowerDrawing.At(sheet, subject with { Corolla = subject.Corolla ?? "white", Spots = null, Anthers = "yellow" }, head, 44, chance);
                continue;
            }
            for (var k = 0; k < 6; k++)
            {
                var berry = head + new Dot(44, 0).Turned(k * Math.PI / 4);
                sheet.Line([head, berry], 2.6, 2, Tints.Stem);
                sheet.Ellipse(berry, 23, 23, 0, Sketch.Round(Tints.Fruit(subject.FruitColour ?? "black"), berry - new Dot(8, 9), 32));
                sheet.Ellipse(berry - new Dot(7, 8), 4, 3, 0, Sketch.Flat(new Rgb24(210, 210, 216)));
            }
        }
    }

    private static void Pot(Sketch sheet)
    {
        var clay = new Rgb24(150, 116, 104);
        sheet.Ellipse(new Dot(480, 664), 190, 26, 0, Sketch.Flat(new Rgb24(120, 134, 126)));
        sheet.Fill([new(352, 560), new(608, 560), new(574, 668), new(386, 668)], (x, _) => Sketch.Shade(clay, 1.15 - (Math.Abs(x - 440) / 420)));
        sheet.Ellipse(new Dot(480, 560), 128, 20, 0, Sketch.Flat(Tints.Soil));
        sheet.Fill([new(560, 470), new(598, 470), new(590, 580), new(570, 580)], Sketch.Flat(new Rgb24(242, 242, 236)));
    }
}
