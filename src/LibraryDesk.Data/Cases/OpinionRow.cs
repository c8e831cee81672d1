namespace LibraryDesk.Data.Cases;

/// <summary>One volunteer's view of a case in one round: sealed first, then reviewed. Both are kept.</summary>
public sealed class OpinionRow : IRevisioned
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    public int Round { get; set; }
    public Guid VolunteerId { get; set; }
    public DateTimeOffset SealedAt { get; set; }
    /// <summary>Candidate id.</summary>
    public required string SealedTaxon { get; set; }
    /// <summary>Empty, "cf." or "aff.".</summary>
    public string SealedQualifier { get; set; } = "";
    /// <summary>The volunteer's own odds for it, 0 to 20 in 20; null when not given.</summary>
    public int? SealedInTwenty { get; set; }
    public string? SealedNote { get; set; }
    /// <summary>Null until the review after the seal is done.</summary>
    public DateTimeOffset? FinalAt { get; set; }
    public string? FinalTaxon { get; set; }
    public string? FinalQualifier { get; set; }
    public string? FinalNote { get; set; }
    public long Revision { get; set; }
}
