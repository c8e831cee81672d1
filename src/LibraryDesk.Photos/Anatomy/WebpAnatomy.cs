using System.Buffers.Binary;

namespace LibraryDesk.Photos.Anatomy;

/// <summary>
/// Walks the chunks of a WebP file (RFC 9649). The essence holds the picture and its transparency; EXIF, XMP, profile and unknown chunks are left out.
/// </summary>
internal static class WebpAnatomy
{
    private const int HeaderLength = 12;
    private const byte AnimationFlag = 0x02;
    private const byte AlphaFlag = 0x10;

    public static Dissection Read(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        var riffEnd = BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]) + 8L;
        if (riffEnd > bytes.Length) return PhotoRefusals.CutShort;
        using var essence = new MemoryStream(bytes.Length);
        essence.Write(bytes[..HeaderLength]);
        int at = HeaderLength, turn = 1;
        long width = 0, height = 0;
        byte[] profile = [];
        var picture = false;
        while (at + 8 <= riffEnd)
        {
            var type = bytes.Slice(at, 4);
            var length = BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]);
            if (at + 8L + length > riffEnd) return PhotoRefusals.CutShort;
            var body = bytes.Slice(at + 8, (int)length);
            if (type.SequenceEqual("ANIM"u8) || type.SequenceEqual("ANMF"u8)) return PhotoRefusals.Moving;
            if (type.SequenceEqual("EXIF"u8)) turn = ExifTurn.Read(body.StartsWith("Exif\0\0"u8) ? body[6..] : body);
            if (type.SequenceEqual("ICCP"u8)) profile = body.ToArray();
            if (type.SequenceEqual("VP8X"u8))
            {
                if (body.Length < 10) return PhotoRefusals.Broken;
                if ((body[0] & AnimationFlag) != 0) return PhotoRefusals.Moving;
                Grow(ref width, ref height, 1 + UInt24(body[4..]), 1 + UInt24(body[7..]));
                essence.Write(bytes.Slice(at, 8));
                essence.WriteByte((byte)(body[0] & AlphaFlag));
                essence.Write(body[1..]);
                if (length % 2 == 1) essence.WriteByte(0);
            }
            else if (type.SequenceEqual("VP8 "u8) || type.SequenceEqual("VP8L"u8))
            {
                if (picture || Size(type, body) is not { } size) return PhotoRefusals.Broken;
                picture = true;
                Grow(ref width, ref height, size.Width, size.Height);
                Copy(essence, bytes.Slice(at, 8), body);
            }
            else if (type.SequenceEqual("ALPH"u8))
            {
                Copy(essence, bytes.Slice(at, 8), body);
            }
            at += 8 + (int)length + (int)(length % 2);
        }
        if (!picture) return PhotoRefusals.Broken;
        var whole = essence.ToArray();
        BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(4), (uint)(whole.Length - 8));
        return new PhotoAnatomy(PictureKind.Webp, width, height, turn, profile, whole);
    }

    private static (long Width, long Height)? Size(ReadOnlySpan<byte> type, ReadOnlySpan<byte> body)
    {
        if (type.SequenceEqual("VP8 "u8))
        {
            // RFC 6386, 9.1: frame tag (3), start code (3), then 14 bits each of width and height.
            if (body.Length < 10 || body[3] != 0x9D || body[4] != 0x01 || body[5] != 0x2A) return null;
            return (BinaryPrimitives.ReadUInt16LittleEndian(body[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(body[8..]) & 0x3FFF);
        }
        if (body.Length < 5 || body[0] != 0x2F) return null;
        var packed = BinaryPrimitives.ReadUInt32LittleEndian(body[1..]);
        return (1 + (packed & 0x3FFF), 1 + ((packed >> 14) & 0x3FFF));
    }

    // The canvas and the frame may differ; the larger one is what the limits must judge.
    private static void Grow(ref long width, ref long height, long w, long h)
    {
        width = Math.Max(width, w);
        height = Math.Max(height, h);
    }

    private static void Copy(MemoryStream essence, ReadOnlySpan<byte> head, ReadOnlySpan<byte> body)
    {
        essence.Write(head);
        essence.Write(body);
        if (body.Length % 2 == 1) essence.WriteByte(0);
    }

    private static int UInt24(ReadOnlySpan<byte> b) => b[0] | (b[1] << 8) | (b[2] << 16);
}
