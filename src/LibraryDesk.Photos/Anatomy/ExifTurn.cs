using System.Buffers.Binary;

namespace LibraryDesk.Photos.Anatomy;

/// <summary>Reads one thing from an EXIF block: the orientation (tag 0x0112, CIPA DC-008). All else in it is of no interest and is dropped.</summary>
internal static class ExifTurn
{
    private const ushort OrientationTag = 0x0112;
    private const ushort ShortType = 3;

    /// <summary>The orientation 1 to 8; 1 when the block is damaged or says nothing.</summary>
    public static int Read(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < 8) return 1;
        var little = tiff.StartsWith("II*\0"u8);
        if (!little && !tiff.StartsWith("MM\0*"u8)) return 1;
        var directory = little ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (directory > tiff.Length - 2) return 1;
        var entries = Short(tiff[(int)directory..], little);
        for (var i = 0; i < entries; i++)
        {
            var at = directory + 2L + (12L * i);
            if (at + 12 > tiff.Length) return 1;
            var entry = tiff.Slice((int)at, 12);
            if (Short(entry, little) != OrientationTag || Short(entry[2..], little) != ShortType) continue;
            var turn = Short(entry[8..], little);
            return turn is >= 1 and <= 8 ? turn : 1;
        }
        return 1;
    }

    private static int Short(ReadOnlySpan<byte> at, bool little) =>
        little ? BinaryPrimitives.ReadUInt16LittleEndian(at) : BinaryPrimitives.ReadUInt16BigEndian(at);
}
