namespace LibraryDesk.Photos;

/// <summary>One stored size: JPEG bytes without any metadata, and its width and height in pixels.</summary>
public sealed record PhotoRendition(PhotoSize Size, int Width, int Height, ReadOnlyMemory<byte> Jpeg);

/// <summary>A photo that may be stored and shown: upright, three sizes, nothing in it but pixels.</summary>
/// <param name="ContentHash">SHA-256 of the large rendition's bytes, 64 lower-case hex digits; names the photo in the store.</param>
/// <param name="SourceWidth">Width of the upright original in pixels, for judging how fine a measurement can be.</param>
/// <param name="SourceHeight">Height of the upright original in pixels.</param>
/// <param name="Renditions">Large, medium, small, in this order.</param>
public sealed record CleanedPhoto(string ContentHash, int SourceWidth, int SourceHeight, IReadOnlyList<PhotoRendition> Renditions)
{
    /// <summary>The rendition of the given size.</summary>
    public PhotoRendition this[PhotoSize size] => Renditions.First(r => r.Size == size);

    /// <summary>The key the given size is stored under.</summary>
    public PhotoKey Key(PhotoSize size) => PhotoKey.For(ContentHash, size);
}
