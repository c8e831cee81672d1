using System.Buffers.Binary;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Colour;

/// <summary>
/// A three-component matrix profile (ICC.1:2022, 8.3.3 and annex F.3), as phones and cameras attach to wide-gamut photos. Colours are traits here,
/// so they are brought to sRGB before the profile is dropped. Profiles of any other kind are dropped without converting.
/// </summary>
internal sealed class MatrixProfile
{
    private const int HeaderLength = 128;
    private const int TagLength = 12;
    private const int EncodeSteps = 4096;

    // sRGB primaries adapted to D50, columns red, green, blue: the colorant tags of the ICC's own sRGB profile.
    private static readonly double[] SrgbColorants = [0.43607, 0.38515, 0.14307, 0.22249, 0.71687, 0.06061, 0.01392, 0.09708, 0.71410];
    private static readonly byte[] Encoded = Enumerable.Range(0, EncodeSteps + 1).Select(i => (byte)Math.Round(255 * Encode((double)i / EncodeSteps))).ToArray();

    private readonly double[][] _curves;
    private readonly double[] _toSrgb;

    private MatrixProfile(double[][] curves, double[] colorants)
    {
        _curves = curves;
        _toSrgb = Times(Inverse(SrgbColorants), colorants);
    }

    /// <summary>Reads a profile; null when it is none of this kind, damaged, or so close to sRGB that converting would only add rounding.</summary>
    public static MatrixProfile? Read(ReadOnlySpan<byte> profile)
    {
        if (profile.Length < HeaderLength + 4 || !profile.Slice(16, 4).SequenceEqual("RGB "u8) || !profile.Slice(20, 4).SequenceEqual("XYZ "u8)) return null;
        var colorants = new double[9];
        var curves = new double[3][];
        for (var channel = 0; channel < 3; channel++)
        {
            var letter = "rgb"u8[channel];
            if (Xyz(Tag(profile, [letter, (byte)'X', (byte)'Y', (byte)'Z'])) is not { } xyz) return null;
            if (Curve(Tag(profile, [letter, (byte)'T', (byte)'R', (byte)'C'])) is not { } curve) return null;
            for (var row = 0; row < 3; row++) colorants[(row * 3) + channel] = xyz[row];
            curves[channel] = curve;
        }
        var read = new MatrixProfile(curves, colorants);
        return read.IsAlmostSrgb() ? null : read;
    }

    /// <summary>Converts every pixel to sRGB; colours outside it are clipped.</summary>
    public void ToSrgb(Image<Rgb24> picture) => picture.ProcessPixelRows(rows =>
    {
        for (var y = 0; y < rows.Height; y++)
        {
            foreach (ref var pixel in rows.GetRowSpan(y)) pixel = Convert(pixel);
        }
    });

    private Rgb24 Convert(Rgb24 pixel)
    {
        var (r, g, b) = (_curves[0][pixel.R], _curves[1][pixel.G], _curves[2][pixel.B]);
        return new Rgb24(Row(0), Row(3), Row(6));
        byte Row(int at)
        {
            var linear = (_toSrgb[at] * r) + (_toSrgb[at + 1] * g) + (_toSrgb[at + 2] * b);
            return Encoded[(int)((Math.Clamp(linear, 0, 1) * EncodeSteps) + 0.5)];
        }
    }

    private bool IsAlmostSrgb()
    {
        for (var i = 0; i < 125; i++)
        {
            var from = new Rgb24((byte)(i % 5 * 63), (byte)(i / 5 % 5 * 63), (byte)(i / 25 * 63));
            var to = Convert(from);
            if (Math.Abs(from.R - to.R) > 3 || Math.Abs(from.G - to.G) > 3 || Math.Abs(from.B - to.B) > 3) return false;
        }
        return true;
    }

    private static ReadOnlySpan<byte> Tag(ReadOnlySpan<byte> profile, ReadOnlySpan<byte> signature)
    {
        var count = Math.Min(BinaryPrimitives.ReadUInt32BigEndian(profile[HeaderLength..]), 100);
        for (var i = 0; i < count; i++)
        {
            var at = HeaderLength + 4 + (i * TagLength);
            if (at + TagLength > profile.Length) return default;
            if (!profile.Slice(at, 4).SequenceEqual(signature)) continue;
            var (offset, size) = (BinaryPrimitives.ReadUInt32BigEndian(profile[(at + 4)..]), BinaryPrimitives.ReadUInt32BigEndian(profile[(at + 8)..]));
            return offset + (ulong)size <= (ulong)profile.Length ? profile.Slice((int)offset, (int)size) : default;
        }
        return default;
    }

    private static double[]? Xyz(ReadOnlySpan<byte> tag) =>
        tag.Length >= 20 && tag.StartsWith("XYZ "u8) ? [Fixed(tag[8..]), Fixed(tag[12..]), Fixed(tag[16..])] : null;

    // 256 linear values, one for each code.
    private static double[]? Curve(ReadOnlySpan<byte> tag)
    {
        if (tag.Length < 12) return null;
        if (tag.StartsWith("curv"u8)) return Sampled(tag);
        if (!tag.StartsWith("para"u8)) return null;
        // ICC.1:2022, table 68: parameters g, then a b, then c, d, then e f, by function type.
        var type = BinaryPrimitives.ReadUInt16BigEndian(tag[8..]);
        if (type > 4) return null;
        var count = (int[])[1, 3, 4, 5, 7];
        if (tag.Length < 12 + (4 * count[type])) return null;
        var p = new double[7];
        for (var i = 0; i < count[type]; i++) p[i] = Fixed(tag[(12 + (4 * i))..]);
        return Table(x => Clean(type switch
        {
            0 => Math.Pow(x, p[0]),
            1 => x >= -p[2] / p[1] ? Math.Pow((p[1] * x) + p[2], p[0]) : 0,
            2 => x >= -p[2] / p[1] ? Math.Pow((p[1] * x) + p[2], p[0]) + p[3] : p[3],
            3 => x >= p[4] ? Math.Pow((p[1] * x) + p[2], p[0]) : p[3] * x,
            _ => x >= p[4] ? Math.Pow((p[1] * x) + p[2], p[0]) + p[5] : (p[3] * x) + p[6],
        }));
    }

    private static double[]? Sampled(ReadOnlySpan<byte> tag)
    {
        var count = BinaryPrimitives.ReadUInt32BigEndian(tag[8..]);
        if (count == 0) return Table(x => x);
        if (tag.Length < 12 + (2L * count)) return null;
        if (count == 1)
        {
            var gamma = BinaryPrimitives.ReadUInt16BigEndian(tag[12..]) / 256.0;
            return Table(x => Math.Pow(x, gamma));
        }
        var samples = new double[count];
        for (var i = 0; i < count; i++) samples[i] = BinaryPrimitives.ReadUInt16BigEndian(tag[(12 + (2 * i))..]) / 65535.0;
        return Table(x =>
        {
            var at = x * (count - 1);
            var low = Math.Min((int)at, (int)count - 2);
            return samples[low] + ((samples[low + 1] - samples[low]) * (at - low));
        });
    }

    private static double[] Table(Func<double, double> curve) => Enumerable.Range(0, 256).Select(code => curve(code / 255.0)).ToArray();

    private static double Clean(double value) => double.IsFinite(value) ? Math.Clamp(value, 0, 1) : 0;

    private static double Fixed(ReadOnlySpan<byte> at) => BinaryPrimitives.ReadInt32BigEndian(at) / 65536.0;

    // IEC 61966-2-1.
    private static double Encode(double linear) => linear <= 0.0031308 ? 12.92 * linear : (1.055 * Math.Pow(linear, 1 / 2.4)) - 0.055;

    private static double[] Times(double[] a, double[] b) =>
        Enumerable.Range(0, 9).Select(i => Enumerable.Range(0, 3).Sum(k => a[(i / 3 * 3) + k] * b[(k * 3) + (i % 3)])).ToArray();

    private static double[] Inverse(double[] m)
    {
        double Minor(int i)
        {
            var (r, c) = (i % 3, i / 3);
            var (r1, r2, c1, c2) = ((r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3);
            return (m[(r1 * 3) + c1] * m[(r2 * 3) + c2]) - (m[(r1 * 3) + c2] * m[(r2 * 3) + c1]);
        }
        var determinant = (m[0] * Minor(0)) + (m[1] * Minor(3)) + (m[2] * Minor(6));
        return Enumerable.Range(0, 9).Select(i => Minor(i) / determinant).ToArray();
    }
}
