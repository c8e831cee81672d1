using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Data.Seeds;

/// <summary>Seed put up from a lot under a code. Derived from the ledger.</summary>
public sealed class PacketRow
{
    public long Id { get; set; }
    public required string Code { get; set; }
    public long LotId { get; set; }
    /// <summary>Ledger entry of its packing.</summary>
    public long Packing { get; set; }
    public DateOnly PackedOn { get; set; }
    public SeedUnit Unit { get; set; }
    public long Held { get; set; }
    public long Stock { get; set; }
    public PacketStanding Standing { get; set; }
    public Guid? HolderId { get; set; }
    public long? LoanId { get; set; }
    public long? RequestId { get; set; }
    public string? Place { get; set; }
}
