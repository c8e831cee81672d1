namespace LibraryDesk.Photos.Anatomy;

/// <summary>
/// What can be known of a picture file without decoding it. Only <paramref name="Essence"/> reaches the decoder, so that no text,
/// profile or thumbnail in the file can do harm there.
/// </summary>
/// <param name="Kind">The format, by content.</param>
/// <param name="Width">Width in pixels as stored, before turning.</param>
/// <param name="Height">Height in pixels as stored.</param>
/// <param name="Turn">EXIF orientation 1 to 8; 1 when none is given.</param>
/// <param name="Profile">The colour profile, or empty when there is none.</param>
/// <param name="Essence">The file without its metadata.</param>
internal sealed record PhotoAnatomy(PictureKind Kind, long Width, long Height, int Turn, ReadOnlyMemory<byte> Profile, ReadOnlyMemory<byte> Essence);

/// <summary>The picture formats that are taken.</summary>
internal enum PictureKind
{
    Jpeg,
    Png,
    Webp,
}

/// <summary>The anatomy, or why the file is refused before anything is decoded.</summary>
internal readonly record struct Dissection(PhotoAnatomy? Anatomy, PhotoRefusal? Refusal)
{
    public static implicit operator Dissection(PhotoAnatomy anatomy) => new(anatomy, null);

    public static implicit operator Dissection(PhotoRefusal refusal) => new(null, refusal);
}

/// <summary>Tells a picture by its first bytes; names and declared types are not asked.</summary>
internal static class Dissector
{
    public static Dissection Dissect(ReadOnlyMemory<byte> file)
    {
        var head = file.Span;
        if (head.Length == 0) return PhotoRefusals.Empty;
        if (head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])) return JpegAnatomy.Read(file);
        if (head.StartsWith(PngAnatomy.Signature)) return PngAnatomy.Read(file);
        if (IsRiff(head, "WEBP"u8)) return WebpAnatomy.Read(file);
        return Other(head) is { } format ? PhotoRefusals.OtherFormat(format) : PhotoRefusals.NotAPicture;
    }

    private static bool IsRiff(ReadOnlySpan<byte> head, ReadOnlySpan<byte> form) =>
        head.Length >= 12 && head.StartsWith("RIFF"u8) && head.Slice(8, 4).SequenceEqual(form);

    // Named only to give the sender a better sentence.
    private static string? Other(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith("GIF8"u8)) return "GIF";
        if (head.StartsWith("BM"u8)) return "BMP";
        if (head.StartsWith("%PDF"u8)) return "PDF";
        if (head.StartsWith("II*\0"u8) || head.StartsWith("MM\0*"u8)) return "TIFF or raw camera";
        if (head.Length < 12 || !head.Slice(4, 4).SequenceEqual("ftyp"u8)) return null;
        var brand = head.Slice(8, 4);
        if (brand.StartsWith("hei"u8) || brand.StartsWith("hev"u8) || brand.SequenceEqual("mif1"u8) || brand.SequenceEqual("msf1"u8)) return "HEIC";
        return brand.SequenceEqual("avif"u8) ? "AVIF" : "video";
    }
}
