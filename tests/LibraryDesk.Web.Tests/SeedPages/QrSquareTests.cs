using LibraryDesk.Web.Features.Labels;
using ZXing;

namespace LibraryDesk.Web.Tests.SeedPages;

/// <summary>QR codes decoded back with ZXing.Net, an independent decoder, from pixels painted from the path that pages draw.</summary>
public class QrSquareTests
{
    [Theory]
    [InlineData("https://desk.example.org/p/Q26-0418-N")]
    [InlineData("http://127.0.0.1:5280/p/Q27-0031-D")]
    [InlineData("https://a-rather-long-name.of-a-library.example.org/seeds/desk/p/Z99-9999999-Z")]
    public void A_drawn_code_reads_back(string address)
    {
        var square = QrSquare.Of(address);
        var read = new BarcodeReaderGeneric().Decode(PaintedPath.Luminance(square, pixelsAModule: 4));
        Assert.Equal((BarcodeFormat.QR_CODE, address), (read.BarcodeFormat, read.Text));
    }

    [Fact]
    public void The_level_is_M()
    {
        var read = new BarcodeReaderGeneric().Decode(PaintedPath.Luminance(QrSquare.Of("https://desk.example.org/p/Q26-0418-N"), pixelsAModule: 4));
        Assert.Equal("M", read.ResultMetadata[ResultMetadataType.ERROR_CORRECTION_LEVEL].ToString());
    }

    // ISO/IEC 18004: four modules on every side.
    [Fact]
    public void Four_modules_on_every_side_stay_white()
    {
        var square = QrSquare.Of("https://desk.example.org/p/Q26-0418-N");
        var dark = PaintedPath.Modules(square);
        for (var row = 0; row < square.Modules; row++)
        {
            for (var column = 0; column < square.Modules; column++)
            {
                var isEdge = Math.Min(Math.Min(row, column), Math.Min(square.Modules - 1 - row, square.Modules - 1 - column)) < QrSquare.QuietZone;
                Assert.False(isEdge && dark[row, column], $"module {row}, {column}");
            }
        }
    }

    // Common practice, no source: a symbol under 16 mm is hard for a phone. The sizes are those of labels.css.
    [Theory]
    [InlineData("https://desk.example.org/p/Q26-0418-N", 27)]
    [InlineData("https://desk.example.org/p/Q26-0418-N", 20.5)]
    [InlineData("https://a-rather-long-name.of-a-library.example.org/seeds/desk/p/Z99-9999999-Z", 20.5)]
    public void The_symbol_without_its_quiet_zone_is_at_least_16_mm(string address, double sideMillimetres)
    {
        var modules = QrSquare.Of(address).Modules;
        Assert.True(sideMillimetres * (modules - (2 * QrSquare.QuietZone)) / modules >= 16);
    }
}
