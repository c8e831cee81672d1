using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Data.Seeds;

/// <summary>Seed that left for another library. Derived from the ledger.</summary>
public sealed class SeedTransferRow
{
    /// <summary>The ledger entry of the transfer.</summary>
    public long Entry { get; set; }
    public long NodeId { get; set; }
    public SeedUnit Unit { get; set; }
    public long Amount { get; set; }
    public required string Library { get; set; }
    public DateOnly SentOn { get; set; }
    public bool IsVoid { get; set; }
}
