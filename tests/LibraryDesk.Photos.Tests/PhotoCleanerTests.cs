using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Tests;

public sealed class PhotoCleanerTests : IDisposable
{
    private readonly PhotoCleaner _cleaner = new(new PhotoLimits());

    public void Dispose() => _cleaner.Dispose();

    private Task<CleaningResult> Clean(byte[] file) => _cleaner.CleanAsync(file, CancellationToken.None);

    private async Task<string?> RefusalOf(byte[] file) => (await Clean(file)).Refusal?.Code;

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task A_picture_of_each_kind_comes_out_in_three_sizes(string kind)
    {
        var photo = (await Clean(Make(kind, 2000, 1500))).Photo!;
        Assert.Equal([(1600, 1200), (800, 600), (240, 180)], photo.Renditions.Select(r => (r.Width, r.Height)));
        Assert.Equal((2000, 1500), (photo.SourceWidth, photo.SourceHeight));
    }

    [Fact]
    public async Task Nothing_is_enlarged()
    {
        var photo = (await Clean(APicture.Jpeg(400, 300))).Photo!;
        Assert.Equal([(400, 300), (400, 300), (240, 180)], photo.Renditions.Select(r => (r.Width, r.Height)));
    }

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task No_segment_but_picture_segments_is_left(string kind)
    {
        var photo = (await Clean(Make(kind, 400, 300, APicture.FullOfMetadata))).Photo!;
        foreach (var rendition in photo.Renditions) Assert.Equal([], JpegSegments.OtherThanPicture(rendition.Jpeg.Span));
    }

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task No_word_of_the_metadata_is_left(string kind)
    {
        var file = Make(kind, 400, 300, APicture.FullOfMetadata);
        Assert.Contains("Secret", Encoding.Latin1.GetString(file), StringComparison.Ordinal);
        var photo = (await Clean(file)).Photo!;
        Assert.All(photo.Renditions, r => Assert.DoesNotContain("Secret", Encoding.Latin1.GetString(r.Jpeg.Span), StringComparison.Ordinal));
    }

    // CIPA DC-008 (EXIF 2.32), tag 0112: where row 0 and column 0 of the stored picture lie in the upright one. The stored picture is
    // red on top (green at its left), blue below. Columns: upright size, then the colours at the upright corners TL, TR, BL, BR.
    [Theory]
    [InlineData(1, 400, 200, "GRBB")]
    [InlineData(2, 400, 200, "RGBB")]
    [InlineData(3, 400, 200, "BBRG")]
    [InlineData(4, 400, 200, "BBGR")]
    [InlineData(5, 200, 400, "GBRB")]
    [InlineData(6, 200, 400, "BGBR")]
    [InlineData(7, 200, 400, "BRBG")]
    [InlineData(8, 200, 400, "RBGB")]
    public async Task The_picture_stands_upright(int orientation, int width, int height, string corners)
    {
        var photo = (await Clean(APicture.Jpeg(400, 200, APicture.Turned(orientation)))).Photo!;
        using var seen = Image.Load<Rgb24>(photo[PhotoSize.Large].Jpeg.Span);
        Assert.Equal((width, height), (seen.Width, seen.Height));
        Assert.Equal(corners, string.Concat(new[] { (8, 8), (width - 9, 8), (8, height - 9), (width - 9, height - 9) }.Select(c => Letter(seen[c.Item1, c.Item2]))));
    }

    [Theory]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task Other_kinds_stand_upright_too(string kind)
    {
        var photo = (await Clean(Make(kind, 400, 200, APicture.Turned(6)))).Photo!;
        Assert.Equal((200, 400), (photo.SourceWidth, photo.SourceHeight));
    }

    [Fact]
    public async Task The_same_picture_has_the_same_hash_and_another_has_another()
    {
        var once = (await Clean(APicture.Jpeg(400, 300))).Photo!;
        var withPlace = (await Clean(APicture.Jpeg(400, 300, p => { APicture.FullOfMetadata(p); APicture.Turned(1)(p); }))).Photo!;
        var other = (await Clean(APicture.Jpeg(410, 300))).Photo!;
        Assert.Equal(once.ContentHash, withPlace.ContentHash);
        Assert.NotEqual(once.ContentHash, other.ContentHash);
    }

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    public async Task A_file_cut_anywhere_is_refused(string kind)
    {
        var file = Make(kind, 300, 200);
        for (var length = 40; length < file.Length; length += Math.Max(1, file.Length / 40))
        {
            Assert.Equal(PhotoRefusals.CutShortCode, await RefusalOf(file[..length]));
        }
    }

    [Fact]
    public async Task A_jpeg_without_its_end_marker_is_refused() =>
        Assert.Equal(PhotoRefusals.CutShortCode, await RefusalOf(APicture.Jpeg()[..^2]));

    [Fact]
    public async Task A_png_that_would_unpack_to_a_gigabyte_is_refused_before_decoding() =>
        // Its data ends early, so a decoder that had been asked would have called it broken.
        Assert.Equal(PhotoRefusals.TooManyPixelsCode, await RefusalOf(APicture.PngPromising(20_000, 20_000)));

    [Theory]
    [InlineData(uint.MaxValue, uint.MaxValue)]
    [InlineData(uint.MaxValue, 1)]
    [InlineData(65_536, 65_536)]
    public async Task Sizes_that_overflow_are_refused(uint width, uint height) =>
        Assert.Equal(PhotoRefusals.TooManyPixelsCode, await RefusalOf(APicture.PngPromising(width, height)));

    [Fact]
    public async Task A_jpeg_that_lies_about_its_size_is_refused_before_decoding()
    {
        var file = APicture.Jpeg();
        var frame = file.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        foreach (var i in (int[])[5, 6, 7, 8]) file[frame + i] = 0xFD;
        Assert.Equal(PhotoRefusals.TooManyPixelsCode, await RefusalOf(file));
    }

    [Fact]
    public async Task Text_that_unpacks_to_a_hundred_megabytes_is_dropped_unread()
    {
        var file = APicture.WithChunk(APicture.Png(), "zTXt", [.. "Comment\0\0"u8, .. APicture.Deflated(100_000_000)]);
        var before = GC.GetTotalAllocatedBytes(precise: true);
        Assert.True((await Clean(file)).Taken);
        Assert.True(GC.GetTotalAllocatedBytes(precise: true) - before < 50_000_000);
    }

    [Fact]
    public async Task Too_many_bytes_are_refused_without_reading_on()
    {
        using var small = new PhotoCleaner(new PhotoLimits { MaxBytes = 200_000 });
        using var endless = new EndlessStream();
        Assert.Equal(PhotoRefusals.TooManyBytesCode, (await small.CleanAsync(endless, CancellationToken.None)).Refusal?.Code);
        Assert.InRange(endless.Served, 1, 400_000);
    }

    [Fact]
    public async Task A_moving_png_is_refused() =>
        Assert.Equal(PhotoRefusals.MovingCode, await RefusalOf(APicture.WithChunk(APicture.Png(), "acTL", new byte[8])));

    [Fact]
    public async Task A_moving_webp_is_refused()
    {
        byte[] body = [.. "WEBPVP8X"u8, 10, 0, 0, 0, 0x02, 0, 0, 0, 99, 0, 0, 99, 0, 0];
        Assert.Equal(PhotoRefusals.MovingCode, await RefusalOf([.. "RIFF"u8, (byte)body.Length, 0, 0, 0, .. body]));
    }

    [Theory]
    [InlineData("", PhotoRefusals.EmptyCode)]
    [InlineData("my peppers.jpg is a text", PhotoRefusals.NotAPictureCode)]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg' onload='x()'/>", PhotoRefusals.NotAPictureCode)]
    [InlineData("%PDF-1.7 and so on", PhotoRefusals.OtherFormatCode)]
    [InlineData("\0\0\0\u0018ftypheic\0\0\0\0mif1heic", PhotoRefusals.OtherFormatCode)]
    [InlineData("RIFF\u0004\0\0\0WEBP", PhotoRefusals.BrokenCode)]
    public async Task What_is_no_picture_we_take_is_refused_by_content(string content, string code) =>
        Assert.Equal(code, await RefusalOf(Encoding.Latin1.GetBytes(content)));

    [Fact]
    public async Task A_gif_is_refused_as_another_format() => Assert.Equal(PhotoRefusals.OtherFormatCode, await RefusalOf(APicture.Gif()));

    [Fact]
    public async Task A_preview_is_too_small() => Assert.Equal(PhotoRefusals.TooSmallCode, await RefusalOf(APicture.Jpeg(400, 63)));

    [Fact]
    public async Task See_through_parts_become_white()
    {
        using var clear = new Image<Rgba32>(100, 100);
        using var file = new MemoryStream();
        await clear.SaveAsPngAsync(file);
        var photo = (await Clean(file.ToArray())).Photo!;
        using var seen = Image.Load<Rgb24>(photo[PhotoSize.Large].Jpeg.Span);
        Assert.True(seen[50, 50].R > 250 && seen[50, 50].G > 250 && seen[50, 50].B > 250);
    }

    [Fact]
    public async Task What_follows_the_end_of_a_jpeg_is_not_kept()
    {
        var plain = (await Clean(APicture.Jpeg())).Photo!;
        var withFilm = (await Clean([.. APicture.Jpeg(), .. "ftypmp42 Secret film"u8])).Photo!;
        Assert.Equal(plain.ContentHash, withFilm.ContentHash);
    }

    [Property(MaxTest = 150)]
    public Property A_damaged_file_is_cleaned_or_refused_but_never_throws() =>
        Prop.ForAll(
            Gen.Elements("jpeg", "png", "webp").ToArbitrary(),
            Gen.Choose(0, 1_000_000).Two().ArrayOf(6).ToArbitrary(),
            (kind, hits) =>
            {
                var file = Make(kind, 96, 80, APicture.Turned(3));
                foreach (var (place, value) in hits) file[place % file.Length] = (byte)value;
                using var cleaner = new PhotoCleaner(new PhotoLimits { MaxPixels = 4_000_000 });
                var result = cleaner.CleanAsync(file, CancellationToken.None).GetAwaiter().GetResult();
                return result.Taken || result.Refusal.Code.StartsWith("photo.", StringComparison.Ordinal);
            });

    internal static byte[] Make(string kind, int width, int height, Action<Image<Rgb24>>? with = null) => kind switch
    {
        "jpeg" => APicture.Jpeg(width, height, with),
        "png" => APicture.Png(width, height, with),
        _ => APicture.Webp(width, height, with),
    };

    private static char Letter(Rgb24 c) => c.B > 128 ? 'B' : c.R > 128 ? 'R' : 'G';

    private sealed class EndlessStream : MemoryStream
    {
        public long Served { get; private set; }

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            Served += buffer.Length;
            return ValueTask.FromResult(buffer.Length);
        }
    }
}
