namespace LibraryDesk.Photos;

/// <summary>What the cleaner takes and how much it does at once. All values are the library's own settings.</summary>
public sealed record PhotoLimits
{
    /// <summary>Largest upload in bytes. A 50-megapixel phone JPEG is about 12 MB (from memory).</summary>
    public long MaxBytes { get; init; } = 20_000_000;

    /// <summary>Most pixels (width times height) that are decoded. 51 million takes a 50-megapixel phone photo; one decode then needs about 200 MB.</summary>
    public long MaxPixels { get; init; } = 51_000_000;

    /// <summary>Shortest edge that still shows something, in pixels.</summary>
    public int MinEdge { get; init; } = 64;

    /// <summary>How many photos are decoded at the same time; the others wait. Pixels live outside the managed heap, so this is what bounds memory.</summary>
    public int ConcurrentDecodes { get; init; } = 2;

    /// <summary>JPEG quality of the stored sizes, 1 to 100.</summary>
    public int Quality { get; init; } = 84;
}
