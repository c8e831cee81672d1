using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Data.Seeds;

/// <summary>A name asserted for an accession or a lot. Derived from the ledger; none is ever erased.</summary>
public sealed class NameClaimRow
{
    public long Id { get; set; }
    public long NodeId { get; set; }
    public string? Species { get; set; }
    public string? Variety { get; set; }
    public ClaimGrounds Grounds { get; set; }
    public Guid? ById { get; set; }
    public DateOnly ClaimedOn { get; set; }
    /// <summary>Number of the case, for a claim that rests on a determination; null with the other evidence columns.</summary>
    public string? CaseNumber { get; set; }
    public OriginLink? Link { get; set; }
    public long? OriginId { get; set; }
    public bool? Fits { get; set; }
    public string? GuideVersion { get; set; }
    public bool IsWithdrawn { get; set; }
}
