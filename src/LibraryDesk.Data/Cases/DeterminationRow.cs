namespace LibraryDesk.Data.Cases;

/// <summary>The desk's decision on a case in one round. None is erased; reopening sets <see cref="SupersededAt"/>.</summary>
public sealed class DeterminationRow
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    public int Round { get; set; }
    /// <summary>Candidate id.</summary>
    public required string Taxon { get; set; }
    /// <summary>Empty, "cf." or "aff.".</summary>
    public string Qualifier { get; set; } = "";
    /// <summary>Named only with an origin; null otherwise.</summary>
    public string? VarietyName { get; set; }
    /// <summary>Packet whose lot gives the variety; null without an origin.</summary>
    public string? OriginPacketCode { get; set; }
    /// <summary>The librarian who determined alone; null when it came of concordant opinions.</summary>
    public Guid? AloneById { get; set; }
    /// <summary>What the librarian who determined alone wrote; of opinions the facts as JSON. In an older row words.</summary>
    public required string Grounds { get; set; }
    public required string GuideId { get; set; }
    public required string GuideVersion { get; set; }
    /// <summary>The ranking at that moment, as JSON, for the desk's record.</summary>
    public required string OddsJson { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? SupersededAt { get; set; }
    /// <summary>Ledger sequence of the name claim it became; null when it became none.</summary>
    public long? ClaimSequence { get; set; }
}
