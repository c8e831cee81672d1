using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace LibraryDesk.Photos.Tests;

/// <summary>ExifTool, an independent reader of metadata, is asked what it still finds.</summary>
public sealed class ExifToolTests
{
    // File-system facts, the picture's own geometry and coding, and what ExifTool computes from them.
    private static readonly HashSet<string> PictureItself =
    [
        "SourceFile", "ExifTool:ExifToolVersion", "File:FileType", "File:FileTypeExtension", "File:MIMEType", "File:ImageWidth", "File:ImageHeight",
        "File:EncodingProcess", "File:BitsPerSample", "File:ColorComponents", "File:YCbCrSubSampling", "JFIF:JFIFVersion", "JFIF:ResolutionUnit",
        "JFIF:XResolution", "JFIF:YResolution", "Composite:ImageSize", "Composite:Megapixels",
    ];

    [SkippableTheory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task ExifTool_finds_the_metadata_before_and_none_after(string kind)
    {
        var original = PhotoCleanerTests.Make(kind, 400, 300, APicture.FullOfMetadata);
        var before = await Groups(original);
        Assert.Contains(before, tag => tag.Contains("GPSLatitude", StringComparison.Ordinal));
        using var cleaner = new PhotoCleaner(new PhotoLimits());
        var photo = (await cleaner.CleanAsync(original, CancellationToken.None)).Photo!;
        foreach (var rendition in photo.Renditions) Assert.Equal([], (await Groups(rendition.Jpeg.ToArray())).Except(PictureItself));
    }

    private static async Task<List<string>> Groups(byte[] picture)
    {
        var ask = new ProcessStartInfo("exiftool", "-json -G -a -u --System:all -") { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        using var tool = Start(ask);
        Skip.If(tool is null, "ExifTool is not installed (Debian: libimage-exiftool-perl).");
        var answer = tool.StandardOutput.ReadToEndAsync();
        await tool.StandardInput.BaseStream.WriteAsync(picture);
        tool.StandardInput.Close();
        await tool.WaitForExitAsync();
        using var json = JsonDocument.Parse(await answer);
        return json.RootElement[0].EnumerateObject().Select(p => p.Name.ToString(CultureInfo.InvariantCulture)).ToList();
    }

    private static Process? Start(ProcessStartInfo ask)
    {
        try
        {
            return Process.Start(ask);
        }
        catch (Win32Exception)
        {
            return null;
        }
    }
}
