using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Web.Features.Labels;
using ZXing;

namespace LibraryDesk.Web.Tests.Labels;

public sealed class QrSquareTests
{
    private const string Address = "https://desk.example.org/p/Q26-0418-N";

    // Independent decoder: ZXing.Net.
    [Theory]
    [InlineData("http://a.io/p/Q26-0001-A")]
    [InlineData(Address)]
    [InlineData("https://desk.example.org/p/Q26-32645-K")]
    [InlineData("https://a-rather-long-name-of-a-library.seeds.example.org/desk/below/a/path/p/Q26-0418-N")]
    public void An_independent_decoder_reads_the_address_back(string address) =>
        Assert.Equal(address, QrPicture.Read(QrSquare.Of(address))?.Text);

    [Property(MaxTest = 100)]
    public Property Every_packet_code_survives_print_and_scan() => Prop.ForAll(
        Gen.Choose(1, 99999).ToArbitrary(),
        number =>
        {
            var code = new PacketCode('Q', 2026, number).ToString();
            var read = QrPicture.Read(QrSquare.Of($"https://desk.example.org/p/{code}"))!.Text;
            return PacketCode.Read(read[(read.LastIndexOf('/') + 1)..]).Match(back => back.ToString() == code, _ => false);
        });

    // ISO/IEC 18004: level M restores about 15 % of the codewords; the level stands in the symbol's format bits.
    [Fact]
    public void The_level_is_M() =>
        Assert.Equal("M", QrPicture.Read(QrSquare.Of(Address))!.ResultMetadata[ResultMetadataType.ERROR_CORRECTION_LEVEL]);

    // ISO/IEC 18004: a quiet zone four modules wide on all four sides.
    [Fact]
    public void Four_modules_on_each_side_stay_white()
    {
        var square = QrSquare.Of(Address);
        var dark = QrPicture.Modules(square);
        var inside = Enumerable.Range(4, square.Modules - 8);

        Assert.Equal(4, QrSquare.QuietZone);
        for (var row = 0; row < square.Modules; row++)
        {
            for (var column = 0; column < square.Modules; column++)
            {
                if (!inside.Contains(row) || !inside.Contains(column)) Assert.False(dark[row, column]);
            }
        }
        Assert.True(dark[4, 4]);
        Assert.True(dark[4, square.Modules - 5]);
    }

    // The house's rule: never under 16 mm of symbol. A stake's square is 21 mm with its quiet zone.
    [Theory]
    [InlineData("http://a.io/p/Q26-0001-A")]
    [InlineData(Address)]
    public void The_symbol_on_a_stake_is_16_mm_or_more(string address)
    {
        var modules = QrSquare.Of(address).Modules;

        Assert.True(21.0 * (modules - 8) / modules >= 16);
    }
}
