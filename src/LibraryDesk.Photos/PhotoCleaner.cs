using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Security.Cryptography;
using LibraryDesk.Photos.Anatomy;
using LibraryDesk.Photos.Colour;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;

namespace LibraryDesk.Photos;

/// <summary>
/// Turns an upload into a photo that may be stored: checked before decoding, upright, in three sizes, without metadata. The sizes are
/// encoded from bare pixels, so nothing of the original file but its picture can survive. Safe to share between threads.
/// </summary>
/// <remarks>Wide-gamut photos with a matrix profile are brought to sRGB; other profiles are dropped without converting.</remarks>
public sealed class PhotoCleaner : IDisposable
{
    private static readonly Meter Meter = new("LibraryDesk.Photos");
    private static readonly Counter<long> Cleaned = Meter.CreateCounter<long>("photos_cleaned");
    private static readonly Counter<long> Refused = Meter.CreateCounter<long>("photos_refused");
    private static readonly Histogram<double> Took = Meter.CreateHistogram<double>("photo_cleaning_seconds", "s");

    // Only these three decoders exist for us: the others are code that hostile files could reach.
    private static readonly Configuration Decoders =
        new(new JpegConfigurationModule(), new PngConfigurationModule(), new WebpConfigurationModule());

    private readonly PhotoLimits _limits;
    private readonly SemaphoreSlim _gate;

    /// <summary>Makes a cleaner with the given limits.</summary>
    public PhotoCleaner(PhotoLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentOutOfRangeException.ThrowIfLessThan(limits.ConcurrentDecodes, 1);
        _limits = limits;
        _gate = new SemaphoreSlim(limits.ConcurrentDecodes);
    }

    /// <summary>Reads at most the allowed number of bytes from <paramref name="upload"/> and cleans them.</summary>
    public async Task<CleaningResult> CleanAsync(Stream upload, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(upload);
        using var file = new MemoryStream();
        var chunk = new byte[81_920];
        int read;
        while ((read = await upload.ReadAsync(chunk, stop)) > 0)
        {
            if (file.Length + read > _limits.MaxBytes) return Refuse(PhotoRefusals.TooManyBytes(_limits.MaxBytes));
            file.Write(chunk, 0, read);
        }
        return await CleanAsync(file.GetBuffer().AsMemory(0, (int)file.Length), stop);
    }

    /// <summary>Cleans a whole file. The result does not depend on the file's name or declared type.</summary>
    public async Task<CleaningResult> CleanAsync(ReadOnlyMemory<byte> file, CancellationToken stop)
    {
        if (file.Length > _limits.MaxBytes) return Refuse(PhotoRefusals.TooManyBytes(_limits.MaxBytes));
        var (anatomy, refusal) = Dissector.Dissect(file);
        if (anatomy is null) return Refuse(refusal ?? PhotoRefusals.Broken);
        if (Judge(anatomy.Width, anatomy.Height) is { } no) return Refuse(no);

        await _gate.WaitAsync(stop);
        try
        {
            return await Task.Run(() => Render(anatomy, stop), stop);
        }
        finally
        {
            _gate.Release();
        }
    }

    public void Dispose() => _gate.Dispose();

    private PhotoRefusal? Judge(long width, long height)
    {
        if (width < 1 || height < 1) return PhotoRefusals.Broken;
        if (width > _limits.MaxPixels || width * height > _limits.MaxPixels) return PhotoRefusals.TooManyPixels(width, height, _limits.MaxPixels);
        return Math.Min(width, height) < _limits.MinEdge ? PhotoRefusals.TooSmall(_limits.MinEdge) : null;
    }

    private CleaningResult Render(PhotoAnatomy anatomy, CancellationToken stop)
    {
        var began = Stopwatch.GetTimestamp();
        try
        {
            using var essence = new MemoryStream(anatomy.Essence.ToArray(), writable: false);
            // The decoder's own reading of the header has the last word on the size.
            var seen = Image.Identify(Decoders, essence, out _);
            if (seen is null) return Refuse(PhotoRefusals.Broken);
            if (Judge(seen.Width, seen.Height) is { } no) return Refuse(no);
            essence.Position = 0;
            using var picture = Upright(essence, anatomy, stop);
            var photo = Shrink(picture, MatrixProfile.Read(anatomy.Profile.Span), stop);
            Cleaned.Add(1);
            Took.Record(Stopwatch.GetElapsedTime(began).TotalSeconds);
            return photo;
        }
        catch (Exception fault) when (fault is not (OperationCanceledException or OutOfMemoryException))
        {
            // Damaged and hostile files make the decoder throw many kinds of exceptions; for the sender they are all the same thing.
            return Refuse(PhotoRefusals.Broken);
        }
    }

    private static Image<Rgb24> Upright(Stream essence, PhotoAnatomy anatomy, CancellationToken stop)
    {
        Image<Rgb24> picture;
        if (anatomy.Kind == PictureKind.Jpeg)
        {
            picture = Image.Load<Rgb24>(Decoders, essence);
        }
        else
        {
            using var clear = Image.Load<Rgba32>(Decoders, essence);
            clear.Mutate(x => x.BackgroundColor(Color.White));
            picture = clear.CloneAs<Rgb24>();
        }
        stop.ThrowIfCancellationRequested();
        // CIPA DC-008, orientation: 2 and 4 mirror, 3 upside down, 5 to 8 lie on their side.
        var (turn, flip) = anatomy.Turn switch
        {
            2 => (RotateMode.None, FlipMode.Horizontal),
            3 => (RotateMode.Rotate180, FlipMode.None),
            4 => (RotateMode.None, FlipMode.Vertical),
            5 => (RotateMode.Rotate90, FlipMode.Horizontal),
            6 => (RotateMode.Rotate90, FlipMode.None),
            7 => (RotateMode.Rotate270, FlipMode.Horizontal),
            8 => (RotateMode.Rotate270, FlipMode.None),
            _ => (RotateMode.None, FlipMode.None),
        };
        if (turn != RotateMode.None || flip != FlipMode.None) picture.Mutate(x => x.RotateFlip(turn, flip));
        return picture;
    }

    private CleanedPhoto Shrink(Image<Rgb24> picture, MatrixProfile? profile, CancellationToken stop)
    {
        var (width, height) = (picture.Width, picture.Height);
        var renditions = new List<PhotoRendition>(3);
        foreach (var size in (PhotoSize[])[PhotoSize.Large, PhotoSize.Medium, PhotoSize.Small])
        {
            stop.ThrowIfCancellationRequested();
            var edge = (int)size;
            if (Math.Max(picture.Width, picture.Height) > edge)
            {
                picture.Mutate(x => x.Resize(new ResizeOptions { Mode = ResizeMode.Max, Size = new Size(edge, edge), Sampler = KnownResamplers.Lanczos3 }));
            }
            if (size == PhotoSize.Large) profile?.ToSrgb(picture);
            renditions.Add(new PhotoRendition(size, picture.Width, picture.Height, Encode(picture)));
        }
        var hash = Convert.ToHexStringLower(SHA256.HashData(renditions[0].Jpeg.Span));
        return new CleanedPhoto(hash, width, height, renditions);
    }

    private byte[] Encode(Image<Rgb24> picture)
    {
        picture.Metadata.ExifProfile = null;
        picture.Metadata.XmpProfile = null;
        picture.Metadata.IptcProfile = null;
        picture.Metadata.IccProfile = null;
        picture.Metadata.HorizontalResolution = 72;
        picture.Metadata.VerticalResolution = 72;
        using var jpeg = new MemoryStream();
        picture.Save(jpeg, new JpegEncoder { Quality = _limits.Quality, ColorType = JpegColorType.YCbCrRatio420 });
        return jpeg.ToArray();
    }

    private static PhotoRefusal Refuse(PhotoRefusal refusal)
    {
        Refused.Add(1, new KeyValuePair<string, object?>("code", refusal.Code));
        return refusal;
    }
}
