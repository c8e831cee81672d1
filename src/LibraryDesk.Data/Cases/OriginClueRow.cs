namespace LibraryDesk.Data.Cases;

/// <summary>Where the plant or its seed may have come from.</summary>
public sealed class OriginClueRow
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    public OriginKind Kind { get; set; }
    /// <summary>Code of the packet it may have come from; null for clues without one.</summary>
    public string? PacketCode { get; set; }
    /// <summary>True when a stake, a scan or a grower's word ties this plant to that packet, not just the loan list.</summary>
    public bool Tied { get; set; }
    /// <summary>Seeds sown from that packet; null when not known.</summary>
    public int? SeedsSown { get; set; }
    public string? Note { get; set; }
    public Guid? ById { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? TakenBackAt { get; set; }
}

/// <summary>Kinds of origin clue.</summary>
public enum OriginKind
{
    /// <summary>A packet this member borrowed.</summary>
    Loan,
    /// <summary>A stake or packet found with the plant.</summary>
    Stake,
    /// <summary>Seed or plant from another person.</summary>
    Gift,
    Swap,
    Bought,
    SelfSown,
    Unknown,
}
