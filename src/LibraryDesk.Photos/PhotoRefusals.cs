namespace LibraryDesk.Photos;

/// <summary>Every reason for which a photo is not taken.</summary>
public static class PhotoRefusals
{
    public const string EmptyCode = "photo.empty";
    public const string TooManyBytesCode = "photo.too-many-bytes";
    public const string TooManyPixelsCode = "photo.too-many-pixels";
    public const string TooSmallCode = "photo.too-small";
    public const string NotAPictureCode = "photo.not-a-picture";
    public const string OtherFormatCode = "photo.other-format";
    public const string CutShortCode = "photo.cut-short";
    public const string MovingCode = "photo.moving";
    public const string BrokenCode = "photo.broken";

    internal static PhotoRefusal Empty { get; } = new(EmptyCode, $"The file is empty. Choose the photo again.");

    internal static PhotoRefusal NotAPicture { get; } = new(NotAPictureCode, $"This file is not a picture. Send a JPEG, PNG or WebP picture.");

    internal static PhotoRefusal CutShort { get; } = new(CutShortCode,
        $"The photo ends too early: part of it did not arrive. Send it again; if that fails, take it again.");

    internal static PhotoRefusal Moving { get; } = new(MovingCode, $"This is a moving picture. Send a JPEG, PNG or WebP picture. A single still one is enough.");

    internal static PhotoRefusal Broken { get; } = new(BrokenCode,
        $"The picture cannot be read: the file is damaged. Open it on your device, save it again as JPEG, and send that.");

    internal static PhotoRefusal TooManyBytes(long limit) => new(TooManyBytesCode,
        $"The file is larger than {limit / 1_000_000.0:0.#} MB, which is the most we take. Send a smaller copy; 2000 pixels on the long edge are plenty.");

    internal static PhotoRefusal TooManyPixels(long width, long height, long limit) => new(TooManyPixelsCode,
        $"The picture says it is {width} by {height} pixels; we take up to {limit / 1_000_000} million pixels. Send a smaller copy; 2000 pixels on the long edge are plenty.");

    internal static PhotoRefusal TooSmall(int minEdge) => new(TooSmallCode,
        $"The picture is under {minEdge} pixels on its short edge, too small to judge a plant by. Send the photo itself, not its preview.");

    internal static PhotoRefusal OtherFormat(string format) => format == "HEIC"
        ? new(OtherFormatCode, $"This is a HEIC photo, which browsers cannot show. Set the camera to \"Most compatible\" (JPEG), or share the photo as JPEG, and send it again.")
        : new(OtherFormatCode, $"This is a {format} file. Send a JPEG, PNG or WebP picture.");
}
