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
    // A phone tries frame after frame, nearer and farther; one picture at one scale is not how a label is read.
    private static readonly int[] PixelsPerModule = [4, 3, 6, 9];

    private static readonly Dictionary<DecodeHintType, object> InAScene = new() { [DecodeHintType.TRY_HARDER] = true };

    // The decoder's search for the corners now and then takes other modules for them; told that the picture is the code, it has none to search.
    private static readonly Dictionary<DecodeHintType, object> FillingThePicture = new() { [DecodeHintType.PURE_BARCODE] = true };

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

    public static Result? Read(QrSquare square) =>
        PixelsPerModule.Select(pixels => Read(Modules(square), square.Modules * pixels, pixels)).FirstOrDefault(read => read is not null);

    private static Result? Read(bool[,] dark, int side, int pixels)
    {
        var grey = new byte[side * side];
        for (var at = 0; at < grey.Length; at++) grey[at] = dark[at / side / pixels, at % side / pixels] ? (byte)0 : (byte)255;
        var source = new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        var reader = new QRCodeReader();
        return reader.decode(new BinaryBitmap(new HybridBinarizer(source)), InAScene)
            ?? reader.decode(new BinaryBitmap(new GlobalHistogramBinarizer(source)), FillingThePicture);
    }

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M(\d+) (\d+)h(\d+)v1h-\d+z")]
    private static partial Regex Run();
}
