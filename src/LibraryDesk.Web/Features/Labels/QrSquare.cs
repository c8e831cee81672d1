using System.Collections;
using System.Globalization;
using System.Text;
using QRCoder;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>
/// A QR code (ISO/IEC 18004) as one SVG path, level M, with its quiet zone of four modules inside the square. Drawn as dark runs, so
/// that it stays sharp at any printer's resolution.
/// </summary>
/// <param name="Modules">Modules along one side, quiet zone included.</param>
/// <param name="Path">SVG path data, one unit a module.</param>
public sealed record QrSquare(int Modules, string Path)
{
    /// <summary>Modules left white on each side: ISO/IEC 18004 asks for four.</summary>
    public const int QuietZone = 4;

    // With fewer than 29 modules the symbol would stay under 16 mm on a stake, for the quiet zone takes its share of the square.
    private const int SmallestVersion = 3;

    public static QrSquare Of(string text)
    {
        using var generator = new QRCodeGenerator();
        using var fitting = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        if (fitting.Version >= SmallestVersion) return Draw(fitting.ModuleMatrix);
        using var larger = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M, requestedVersion: SmallestVersion);
        return Draw(larger.ModuleMatrix);
    }

    private static QrSquare Draw(List<BitArray> matrix)
    {
        var path = new StringBuilder();
        for (var row = 0; row < matrix.Count; row++)
        {
            for (var column = 0; column < matrix.Count; column++)
            {
                if (!matrix[row][column]) continue;
                var from = column;
                while (column + 1 < matrix.Count && matrix[row][column + 1]) column++;
                path.Append(CultureInfo.InvariantCulture, $"M{from} {row}h{column - from + 1}v1h-{column - from + 1}z");
            }
        }
        return new(matrix.Count, path.ToString());
    }
}
