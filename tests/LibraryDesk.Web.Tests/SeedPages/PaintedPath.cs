using System.Globalization;
using System.Text.RegularExpressions;
using LibraryDesk.Web.Features.Labels;
using ZXing;

namespace LibraryDesk.Web.Tests.SeedPages;

/// <summary>Paints the path of a QR square into pixels, as a browser would.</summary>
internal static partial class PaintedPath
{
    public static bool[,] Modules(QrSquare square)
    {
        var dark = new bool[square.Modules, square.Modules];
        foreach (Match run in Run().Matches(square.Path))
        {
            var (from, row, length) = (Number(run, 1), Number(run, 2), Number(run, 3));
            for (var column = from; column < from + length; column++) dark[row, column] = true;
        }
        return dark;
    }

    public static RGBLuminanceSource Luminance(QrSquare square, int pixelsAModule)
    {
        var dark = Modules(square);
        var side = square.Modules * pixelsAModule;
        var pixels = new byte[side * side];
        for (var at = 0; at < pixels.Length; at++) pixels[at] = dark[at / side / pixelsAModule, at % side / pixelsAModule] ? (byte)0 : (byte)255;
        return new RGBLuminanceSource(pixels, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
    }

    private static int Number(Match run, int group) => int.Parse(run.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M(\d+) (\d+)h(\d+)v1h-\d+z")]
    private static partial Regex Run();
}
