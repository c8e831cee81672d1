using System.Buffers.Binary;
using System.IO.Compression;

namespace LibraryDesk.Photos.Anatomy;

/// <summary>
/// Walks the chunks of a PNG file (W3C PNG, third edition) up to IEND. Of the ancillary chunks only transparency is kept; compressed text
/// and profiles, which can unpack to gigabytes, never reach the decoder.
/// </summary>
internal static class PngAnatomy
{
    private const int MaxProfile = 1_000_000;

    public static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    public static Dissection Read(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        using var essence = new MemoryStream(bytes.Length);
        essence.Write(Signature);
        int at = Signature.Length, turn = 1;
        byte[] profile = [];
        (uint Width, uint Height)? header = null;
        while (at + 12 <= bytes.Length)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
            if (length > int.MaxValue - 12) return PhotoRefusals.Broken;
            var whole = (int)length + 12;
            if (at + (long)whole > bytes.Length) return PhotoRefusals.CutShort;
            var type = bytes.Slice(at + 4, 4);
            var body = bytes.Slice(at + 8, (int)length);
            if (header is null != type.SequenceEqual("IHDR"u8)) return PhotoRefusals.Broken;
            if (header is null)
            {
                if (body.Length != 13) return PhotoRefusals.Broken;
                header = (BinaryPrimitives.ReadUInt32BigEndian(body), BinaryPrimitives.ReadUInt32BigEndian(body[4..]));
            }
            if (type.SequenceEqual("acTL"u8)) return PhotoRefusals.Moving;
            if (type.SequenceEqual("eXIf"u8)) turn = ExifTurn.Read(body);
            if (type.SequenceEqual("iCCP"u8)) profile = Unpack(body);
            if (IsEssential(type)) essence.Write(bytes.Slice(at, whole));
            if (type.SequenceEqual("IEND"u8))
            {
                return new PhotoAnatomy(PictureKind.Png, header.Value.Width, header.Value.Height, turn, profile, essence.ToArray());
            }
            at += whole;
        }
        return PhotoRefusals.CutShort;
    }

    // A name, a zero, the method, then the packed profile. A profile of more than this is no photo's; it is left out.
    private static byte[] Unpack(ReadOnlySpan<byte> body)
    {
        var packed = body.IndexOf((byte)0) + 2;
        if (packed < 2 || packed >= body.Length) return [];
        var profile = new byte[MaxProfile];
        using var zlib = new ZLibStream(new MemoryStream(body[packed..].ToArray()), CompressionMode.Decompress);
        try
        {
            var length = zlib.ReadAtLeast(profile, MaxProfile, throwOnEndOfStream: false);
            return length < MaxProfile ? profile[..length] : [];
        }
        catch (InvalidDataException)
        {
            return [];
        }
    }

    // An upper-case first letter marks a critical chunk.
    private static bool IsEssential(ReadOnlySpan<byte> type) => type[0] is >= (byte)'A' and <= (byte)'Z' || type.SequenceEqual("tRNS"u8);
}
