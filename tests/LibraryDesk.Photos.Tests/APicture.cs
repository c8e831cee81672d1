using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats;
using SixLabors.ImageSharp.Formats.Gif;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.Metadata.Profiles.Icc;
using SixLabors.ImageSharp.Metadata.Profiles.Iptc;
using SixLabors.ImageSharp.Metadata.Profiles.Xmp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Tests;

/// <summary>Makes test pictures: upper half red, lower half blue, left edge of the upper half green.</summary>
internal static class APicture
{
    public static Image<Rgb24> Of(int width, int height)
    {
        var picture = new Image<Rgb24>(width, height);
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                picture[x, y] = y >= height / 2 ? new Rgb24(0, 0, 255) : x < width / 4 ? new Rgb24(0, 160, 0) : new Rgb24(255, 0, 0);
            }
        }
        return picture;
    }

    public static byte[] Jpeg(int width = 400, int height = 300, Action<Image<Rgb24>>? with = null) => Save(width, height, new JpegEncoder { Quality = 90 }, with);

    public static byte[] Png(int width = 400, int height = 300, Action<Image<Rgb24>>? with = null) => Save(width, height, new PngEncoder(), with);

    public static byte[] Webp(int width = 400, int height = 300, Action<Image<Rgb24>>? with = null) => Save(width, height, new WebpEncoder(), with);

    public static byte[] Gif() => Save(80, 80, new GifEncoder(), null);

    /// <summary>EXIF with place, camera, owner and orientation, XMP, IPTC and a profile.</summary>
    public static void FullOfMetadata(Image<Rgb24> picture)
    {
        var exif = new ExifProfile();
        exif.SetValue(ExifTag.GPSLatitudeRef, "N");
        exif.SetValue(ExifTag.GPSLatitude, [new Rational(51u), new Rational(28u), new Rational(38u)]);
        exif.SetValue(ExifTag.GPSLongitudeRef, "W");
        exif.SetValue(ExifTag.GPSLongitude, [new Rational(0u), new Rational(0u), new Rational(5u)]);
        exif.SetValue(ExifTag.Make, "Secret Camera Works");
        exif.SetValue(ExifTag.Artist, "Secret Person");
        exif.SetValue(ExifTag.Orientation, (ushort)6);
        picture.Metadata.ExifProfile = exif;
        picture.Metadata.XmpProfile = new XmpProfile(Encoding.UTF8.GetBytes(
            "<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description xmlns:dc='http://purl.org/dc/elements/1.1/' dc:source='Secret Source'/></rdf:RDF></x:xmpmeta>"));
        var iptc = new IptcProfile();
        iptc.SetValue(IptcTag.City, "Secret Town");
        picture.Metadata.IptcProfile = iptc;
        picture.Metadata.IccProfile = new IccProfile { Header = { CmmType = "Secret" } };
    }

    public static Action<Image<Rgb24>> Turned(int orientation) => picture =>
    {
        picture.Metadata.ExifProfile = new ExifProfile();
        picture.Metadata.ExifProfile.SetValue(ExifTag.Orientation, (ushort)orientation);
    };

    /// <summary>A PNG of a few hundred bytes whose header promises any size; its data would unpack to zeros without end.</summary>
    public static byte[] PngPromising(uint width, uint height)
    {
        using var file = new MemoryStream();
        file.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]);
        var header = new byte[13];
        BinaryPrimitives.WriteUInt32BigEndian(header, width);
        BinaryPrimitives.WriteUInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        file.Write(PngChunk("IHDR", header));
        file.Write(PngChunk("IDAT", Deflated(100_000)));
        file.Write(PngChunk("IEND", []));
        return file.ToArray();
    }

    public static byte[] PngChunk(string type, byte[] body)
    {
        var chunk = new byte[body.Length + 12];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, (uint)body.Length);
        Encoding.ASCII.GetBytes(type).CopyTo(chunk, 4);
        body.CopyTo(chunk, 8);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(chunk.Length - 4), Crc32(chunk.AsSpan(4, body.Length + 4)));
        return chunk;
    }

    /// <summary>Puts a chunk right behind the PNG header.</summary>
    public static byte[] WithChunk(byte[] png, string type, byte[] body) => [.. png[..33], .. PngChunk(type, body), .. png[33..]];

    public static byte[] Deflated(int zeros)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true)) zlib.Write(new byte[zeros]);
        return packed.ToArray();
    }

    // W3C PNG, annex D: the polynomial EDB88320.
    private static uint Crc32(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFF_FFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var i = 0; i < 8; i++) crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB8_8320u : crc >> 1;
        }
        return ~crc;
    }

    private static byte[] Save(int width, int height, IImageEncoder encoder, Action<Image<Rgb24>>? with)
    {
        using var picture = Of(width, height);
        with?.Invoke(picture);
        using var file = new MemoryStream();
        picture.Save(file, encoder);
        return file.ToArray();
    }
}
