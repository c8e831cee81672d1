namespace LibraryDesk.Data.Seeds;

/// <summary>A photo of what the library means by a variety. Its cleaned copies are in the photo store; the original is never kept.</summary>
public sealed class VarietyPhotoRow
{
    public Guid Id { get; set; }
    public long VarietyId { get; set; }
    /// <summary>Key of the cleaned copies in the store.</summary>
    public required string StoreKey { get; set; }
    public int Width { get; set; }
    public int Height { get; set; }
    public long Bytes { get; set; }
    /// <summary>What it shows, for people who cannot see it.</summary>
    public required string Caption { get; set; }
    /// <summary>True for the demo's drawn stand-ins.</summary>
    public bool IsDrawing { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? RemovedAt { get; set; }
}
