using System.Buffers.Binary;

namespace LibraryDesk.Photos.Anatomy;

/// <summary>
/// Walks the segments of a JPEG file (ITU-T T.81, annex B) up to the end marker. Application segments and comments are left out of the
/// essence, but for APP14, which says how the colours are coded. What follows the end marker (a second picture, a film) is dropped.
/// </summary>
internal static class JpegAnatomy
{
    private const byte EndOfImage = 0xD9;
    private const byte StartOfScan = 0xDA;
    private const byte App1 = 0xE1;
    private const byte App2 = 0xE2;
    private const byte App14 = 0xEE;
    private const byte Comment = 0xFE;

    public static Dissection Read(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        using var essence = new MemoryStream(bytes.Length);
        essence.Write(bytes[..2]);
        using var profile = new MemoryStream();
        int at = 2, turn = 1;
        (int Width, int Height)? frame = null;
        while (NextMarker(bytes, ref at) is { } marker)
        {
            if (marker == EndOfImage)
            {
                if (frame is null) return PhotoRefusals.Broken;
                essence.Write([0xFF, EndOfImage]);
                return new PhotoAnatomy(PictureKind.Jpeg, frame.Value.Width, frame.Value.Height, turn, profile.ToArray(), essence.ToArray());
            }
            if (at + 2 > bytes.Length) return PhotoRefusals.CutShort;
            var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);
            if (length < 2) return PhotoRefusals.Broken;
            if (at + length > bytes.Length) return PhotoRefusals.CutShort;
            var body = bytes.Slice(at + 2, length - 2);
            if (IsFrame(marker))
            {
                // A second frame could make the decoder see another size than the one checked here.
                if (frame is not null || body.Length < 6) return PhotoRefusals.Broken;
                frame = (BinaryPrimitives.ReadUInt16BigEndian(body[3..]), BinaryPrimitives.ReadUInt16BigEndian(body[1..]));
            }
            if (marker == App1 && body.StartsWith("Exif\0\0"u8)) turn = ExifTurn.Read(body[6..]);
            // ICC.1:2022, B.4: the profile comes in numbered parts, in practice in order.
            if (marker == App2 && body.Length > 14 && body.StartsWith("ICC_PROFILE\0"u8)) profile.Write(body[14..]);
            var end = marker == StartOfScan ? EndOfScan(bytes, at + length) : at + length;
            if (!IsMetadata(marker))
            {
                essence.Write([0xFF, marker]);
                essence.Write(bytes[at..end]);
            }
            at = end;
        }
        return PhotoRefusals.CutShort;
    }

    private static byte? NextMarker(ReadOnlySpan<byte> bytes, ref int at)
    {
        while (at < bytes.Length && bytes[at] != 0xFF) at++;
        while (at < bytes.Length && bytes[at] == 0xFF) at++;
        return at < bytes.Length ? bytes[at++] : null;
    }

    // In scan data FF is followed by 00 (a data byte) or by a restart marker; anything else begins the next segment.
    private static int EndOfScan(ReadOnlySpan<byte> bytes, int at)
    {
        while (true)
        {
            var next = bytes[at..].IndexOf((byte)0xFF);
            if (next < 0 || at + next + 1 >= bytes.Length) return bytes.Length;
            at += next;
            var marker = bytes[at + 1];
            if (marker is not (0x00 or 0xFF or (>= 0xD0 and <= 0xD7))) return at;
            at += marker == 0xFF ? 1 : 2;
        }
    }

    // SOF0 to SOF15 without DHT (C4), JPG (C8) and DAC (CC).
    private static bool IsFrame(byte marker) => marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC);

    private static bool IsMetadata(byte marker) => marker is (>= 0xE0 and <= 0xEF and not App14) or Comment;
}
