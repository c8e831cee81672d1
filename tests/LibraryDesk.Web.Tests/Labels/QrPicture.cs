using System.Globalization;
using System.Text.RegularExpressions;
using LibraryDesk.Web.Features.Labels;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace LibraryDesk.Web.Tests.Labels;

/// <summary>A QR code painted from its SVG path, and read back by a decoder that is not ours (ZXing.Net).</summary>
internal static partial class QrPicture
{
    private const int PixelsPerModule = 4;

    public static bool[,] Modules(QrSquare square)
    {
        var dark = new bool[square.Modules, square.Modules];
        foreach (Match run in Run().Matches(square.Path))
        {
            var (x, y, length) = (Number(run, 1), Number(run, 2), Number(run, 3));
            for (var step = 0; step < length; step++) dark[y, x + step] = true;
        }
        return dark;
    }

    public static Result? Read(QrSquare square)
    {
        var dark = Modules(square);
        var side = square.Modules * PixelsPerModule;
        var grey = new byte[side * side];
        for (var at = 0; at < grey.Length; at++) grey[at] = dark[at / side / PixelsPerModule, at % side / PixelsPerModule] ? (byte)0 : (byte)255;
        var source = new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)));
    }

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M(\d+) (\d+)h(\d+)v1h-\d+z")]
    private static partial Regex Run();
}
