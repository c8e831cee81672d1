namespace LibraryDesk.Data.Cases;

/// <summary>One mystery plant, from filing to closing.</summary>
public sealed class CaseRow : IRevisioned
{
    /// <summary>Also the number people call it by.</summary>
    public long Id { get; set; }
    public required string Title { get; set; }
    public required string GuideId { get; set; }
    /// <summary>The guide version its odds are read from; moves forward while open, stands still once determined.</summary>
    public required string GuideVersion { get; set; }
    public CaseState State { get; set; }
    public Specimen Specimen { get; set; }
    /// <summary>Null: filed by a guest, or for a walk-in without an account.</summary>
    public Guid? OwnerId { get; set; }
    /// <summary>The volunteer or librarian who filed it for somebody at the counter; null when the owner filed it.</summary>
    public Guid? FiledForById { get; set; }
    /// <summary>Where a guest is written to; null for account holders and once erased.</summary>
    public string? GuestEmail { get; set; }
    /// <summary>The language in which a guest filed and is written to, ISO 639-1; null for account holders.</summary>
    public string? GuestLanguage { get; set; }
    /// <summary>SHA-256 of the secret in the guest's link, hex; null for account holders.</summary>
    public string? GuestKeyHash { get; set; }
    /// <summary>The same secret locked with the server's own keys, so that later letters can carry the link; null for account holders.</summary>
    public string? GuestKeyLocked { get; set; }
    /// <summary>Plants filed together (a tray that lost its labels) share one; null for a single plant.</summary>
    public Guid? BatchId { get; set; }
    /// <summary>1, 2, ... raised when the case is reopened; opinions belong to a round.</summary>
    public int Round { get; set; } = 1;
    public DateTimeOffset CreatedAt { get; set; }
    /// <summary>Null while a draft.</summary>
    public DateTimeOffset? FiledAt { get; set; }
    public DateTimeOffset StateSince { get; set; }
    /// <summary>Why it was closed, or what was learned; null while not closed.</summary>
    public string? ClosingNote { get; set; }
    public long Revision { get; set; }
}
