using System.Buffers.Binary;
using System.ComponentModel;
using System.Diagnostics;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata.Profiles.Icc;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Tests;

/// <summary>Wide-gamut colours are brought to sRGB. Little CMS, by way of ImageMagick, is the independent reference.</summary>
public sealed class ColourTests : IDisposable
{
    // Display P3: SMPTE RP 431-2 primaries with D65 and the sRGB curve, adapted to D50 (Bradford). From memory of the profile's tags.
    private static readonly (double X, double Y, double Z)[] P3 = [(0.51512, 0.24120, -0.00105), (0.29198, 0.69225, 0.04189), (0.15710, 0.06657, 0.78407)];
    private static readonly double[] SrgbCurve = [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045];
    private static readonly Rgb24[] Samples = [new(128, 128, 128), new(200, 100, 50), new(60, 160, 70), new(90, 60, 180), new(255, 255, 255), new(230, 60, 40), new(12, 12, 12)];

    private readonly PhotoCleaner _cleaner = new(new PhotoLimits { Quality = 100 });

    public void Dispose() => _cleaner.Dispose();

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task A_wide_gamut_red_becomes_stronger_in_srgb(string kind)
    {
        var seen = await Cleaned(Tagged(kind, new Rgb24(200, 100, 50), Profile(P3)));
        // Worked by hand with the linear Display P3 to sRGB matrix (from memory: 1.2249 -0.2247 0 / -0.0420 1.0419 0 / -0.0197 -0.0786 1.0979): 215, 93, 31.
        Assert.InRange(seen.R, 211, 219);
        Assert.InRange(seen.G, 89, 97);
        Assert.InRange(seen.B, 26, 36);
    }

    [Fact]
    public async Task An_srgb_profile_changes_nothing()
    {
        (double, double, double)[] srgb = [(0.43607, 0.22249, 0.01392), (0.38515, 0.71687, 0.09708), (0.14307, 0.06061, 0.71410)];
        foreach (var sample in Samples)
        {
            Assert.Equal(await Cleaned(APicture.Png(96, 96, p => Paint(p, sample, null))), await Cleaned(Tagged("png", sample, Profile(srgb))));
        }
    }

    [Fact]
    public async Task A_damaged_profile_is_dropped()
    {
        var whole = Profile(P3);
        for (var length = 0; length < whole.Length; length += 13)
        {
            var body = whole[..length];
            Assert.True((await _cleaner.CleanAsync(Tagged("png", new Rgb24(200, 100, 50), body), CancellationToken.None)).Taken);
        }
    }

    [SkippableFact]
    public async Task Colours_are_those_of_little_cms()
    {
        var folder = Directory.CreateTempSubdirectory("desk-colour-").FullName;
        try
        {
            var (p3, srgb, from, to) = (Path.Combine(folder, "p3.icc"), Path.Combine(folder, "srgb.icc"), Path.Combine(folder, "a.ppm"), Path.Combine(folder, "b.ppm"));
            await File.WriteAllBytesAsync(p3, Profile(P3));
            await File.WriteAllBytesAsync(srgb, Profile([(0.43607, 0.22249, 0.01392), (0.38515, 0.71687, 0.09708), (0.14307, 0.06061, 0.71410)]));
            foreach (var sample in Samples)
            {
                await File.WriteAllBytesAsync(from, [.. "P6\n1 1\n255\n"u8, sample.R, sample.G, sample.B]);
                Skip.IfNot(await Ran(File.Exists("/usr/bin/convert") ? "/usr/bin/convert" : "convert", $"{from} -profile {p3} -profile {srgb} -depth 8 {to}"), "ImageMagick with Little CMS is not installed (Debian: imagemagick).");
                var reference = (await File.ReadAllBytesAsync(to))[^3..];
                var seen = await Cleaned(Tagged("png", sample, Profile(P3)));
                // 3 of 255 leaves room for the JPEG coding of the stored copy.
                Assert.True(Near(seen.R, reference[0]) && Near(seen.G, reference[1]) && Near(seen.B, reference[2]), $"{sample}: {seen}, reference {string.Join(',', reference)}");
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static bool Near(byte a, byte b) => Math.Abs(a - b) <= 3;

    private async Task<Rgb24> Cleaned(byte[] file)
    {
        var photo = (await _cleaner.CleanAsync(file, CancellationToken.None)).Photo!;
        using var seen = Image.Load<Rgb24>(photo[PhotoSize.Large].Jpeg.Span);
        return seen[48, 48];
    }

    private static void Paint(Image<Rgb24> picture, Rgb24 colour, byte[]? profile)
    {
        picture.ProcessPixelRows(rows => { for (var y = 0; y < rows.Height; y++) rows.GetRowSpan(y).Fill(colour); });
        if (profile is not null) picture.Metadata.IccProfile = new IccProfile(profile);
    }

    // The imaging library writes profiles into JPEG only; the other two get theirs by hand.
    private static byte[] Tagged(string kind, Rgb24 colour, byte[] profile)
    {
        if (kind == "jpeg") return APicture.Jpeg(96, 96, p => Paint(p, colour, profile));
        var plain = PhotoCleanerTests.Make(kind, 96, 96, p => Paint(p, colour, null));
        if (kind == "png") return APicture.WithChunk(plain, "iCCP", [.. "p\0\0"u8, .. Packed(profile)]);
        var padding = new byte[profile.Length % 2];
        byte[] body = [.. "WEBPVP8X"u8, 10, 0, 0, 0, 0x20, 0, 0, 0, 95, 0, 0, 95, 0, 0, .. "ICCP"u8, .. BitConverter.GetBytes(profile.Length), .. profile, .. padding, .. plain[12..]];
        return [.. "RIFF"u8, .. BitConverter.GetBytes(body.Length), .. body];
    }

    private static byte[] Packed(byte[] body)
    {
        using var packed = new MemoryStream();
        using (var zlib = new System.IO.Compression.ZLibStream(packed, System.IO.Compression.CompressionLevel.Optimal, leaveOpen: true)) zlib.Write(body);
        return packed.ToArray();
    }

    // A matrix profile as ICC.1:2022 lays it out: header, tag table, white point, three colorants, one shared curve.
    private static byte[] Profile((double X, double Y, double Z)[] colorants)
    {
        const int curveLength = 12 + 20, xyzLength = 20, tags = 9, textLength = 28;
        const int start = 128 + 4 + (tags * 12);
        var length = start + (4 * xyzLength) + curveLength + (2 * textLength);
        var profile = new byte[length];
        BinaryPrimitives.WriteInt32BigEndian(profile, length);
        profile[8] = 4;
        "mntrRGB XYZ "u8.CopyTo(profile.AsSpan(12));
        "acsp"u8.CopyTo(profile.AsSpan(36));
        Xyz(profile.AsSpan(68), (0.9642, 1, 0.8249));
        BinaryPrimitives.WriteInt32BigEndian(profile.AsSpan(128), tags);
        var table = 132;
        var at = start;
        Add("wtpt"u8, xyzLength, tag => { "XYZ "u8.CopyTo(tag); Xyz(tag[8..], (0.9642, 1, 0.8249)); });
        foreach (var (letter, colorant) in "rgb"u8.ToArray().Zip(colorants)) Add([letter, (byte)'X', (byte)'Y', (byte)'Z'], xyzLength, tag => { "XYZ "u8.CopyTo(tag); Xyz(tag[8..], colorant); });
        Add("rTRC"u8, curveLength, tag =>
        {
            "para"u8.CopyTo(tag);
            tag[9] = 3;
            for (var i = 0; i < 5; i++) Fixed(tag[(12 + (4 * i))..], SrgbCurve[i]);
        });
        at -= curveLength;
        Add("gTRC"u8, curveLength, _ => { });
        at -= curveLength;
        Add("bTRC"u8, curveLength, _ => { });
        foreach (var name in (string[])["desc", "cprt"])
        {
            Add(System.Text.Encoding.ASCII.GetBytes(name), textLength, tag =>
            {
                "mluc"u8.CopyTo(tag);
                tag[11] = 1;
                tag[15] = 12;
                "enUS"u8.CopyTo(tag[16..]);
                tag[27] = 28;
            });
        }
        return profile;

        void Add(ReadOnlySpan<byte> name, int size, Fill fill)
        {
            name.CopyTo(profile.AsSpan(table));
            BinaryPrimitives.WriteInt32BigEndian(profile.AsSpan(table + 4), at);
            BinaryPrimitives.WriteInt32BigEndian(profile.AsSpan(table + 8), size);
            fill(profile.AsSpan(at, size));
            table += 12;
            at += size;
        }
    }

    private delegate void Fill(Span<byte> tag);

    private static void Xyz(Span<byte> at, (double X, double Y, double Z) value)
    {
        Fixed(at, value.X);
        Fixed(at[4..], value.Y);
        Fixed(at[8..], value.Z);
    }

    private static void Fixed(Span<byte> at, double value) => BinaryPrimitives.WriteInt32BigEndian(at, (int)Math.Round(value * 65536));

    private static async Task<bool> Ran(string tool, string arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(tool, arguments) { RedirectStandardError = true })!;
            await process.WaitForExitAsync();
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }
}
