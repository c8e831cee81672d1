namespace LibraryDesk.Photos.Tests;

/// <summary>Lists the segments of a JPEG that are not needed to show it (ITU-T T.81, table B.1): all but JFIF's APP0, tables, frame and scan.</summary>
internal static class JpegSegments
{
    public static IReadOnlyList<string> OtherThanPicture(ReadOnlySpan<byte> jpeg)
    {
        var others = new List<string>();
        var at = 2;
        while (jpeg[at + 1] != 0xDA)
        {
            Assert.Equal(0xFF, jpeg[at]);
            var marker = jpeg[at + 1];
            var length = (jpeg[at + 2] << 8) | jpeg[at + 3];
            var jfif = marker == 0xE0 && jpeg.Slice(at + 4, 5).SequenceEqual("JFIF\0"u8) && length == 16;
            if (!jfif && marker is not (0xDB or 0xC4 or 0xDD or (>= 0xC0 and <= 0xC2))) others.Add(marker.ToString("X2", System.Globalization.CultureInfo.InvariantCulture));
            at += length + 2;
        }
        Assert.True(jpeg.EndsWith((ReadOnlySpan<byte>)[0xFF, 0xD9]));
        return others;
    }
}
