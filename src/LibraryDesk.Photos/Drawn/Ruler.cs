using System.Globalization;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>A ruler in millimetres, so that lengths can be measured on a drawing.</summary>
internal static class Ruler
{
    /// <summary>Lays a ruler; <paramref name="unitsPerMm"/> sheet units are one millimetre.</summary>
    public static void Along(Sketch sheet, double x, double y, double length, double unitsPerMm)
    {
        const double height = 64;
        sheet.Fill([new(x, y), new(x + length, y), new(x + length, y + height), new(x, y + height)], Sketch.Flat(new Rgb24(247, 240, 214)));
        var numbered = unitsPerMm < 5 ? 50 : 10;
        for (var mm = 0; (mm * unitsPerMm) + 12 <= length; mm++)
        {
            var at = x + 8 + (mm * unitsPerMm);
            var tick = mm % 10 == 0 ? 24 : mm % 5 == 0 ? 17 : 10;
            sheet.Line([new(at, y), new(at, y + tick)], 1.4, 1.4, Tints.Ink);
            if (mm % numbered == 0 && at + 30 < x + length) Lettering.Write(sheet, mm.ToString(CultureInfo.InvariantCulture), new Dot(at - 4, y + 32), 2, Tints.Ink);
        }
    }
}
