namespace LibraryDesk.Data.Guides;

/// <summary>One published version of a crop guide, kept whole: a determined case can always be re-read by the version it was judged by.</summary>
public sealed class GuideVersionRow
{
    public int Id { get; set; }
    public required string GuideId { get; set; }
    public required string Version { get; set; }
    /// <summary>The guide file, byte for byte.</summary>
    public required string Json { get; set; }
    public DateTimeOffset PublishedAt { get; set; }
    /// <summary>Null for a version that came with the software.</summary>
    public Guid? PublishedById { get; set; }
    /// <summary>What changed and why, in the librarian's words; null for a version that came with the software.</summary>
    public string? Note { get; set; }
}
