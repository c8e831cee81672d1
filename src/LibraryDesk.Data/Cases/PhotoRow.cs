namespace LibraryDesk.Data.Cases;

/// <summary>A photo whose cleaned copies are in the photo store. The original is never kept.</summary>
public sealed class PhotoRow
{
    public Guid Id { get; set; }
    public long CaseId { get; set; }
    public long LookId { get; set; }
    /// <summary>Part id it shows, or "whole"; empty when not said.</summary>
    public string Part { get; set; } = "";
    /// <summary>Key of the cleaned copies in the store.</summary>
    public required string StoreKey { get; set; }
    public int Width { get; set; }
    public int Height { get; set; }
    public long Bytes { get; set; }
    /// <summary>What it shows, for people who cannot see it; null when not said.</summary>
    public string? Caption { get; set; }
    /// <summary>True for the demo's drawn stand-ins.</summary>
    public bool IsDrawing { get; set; }
    public Guid? ById { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? RemovedAt { get; set; }
}
