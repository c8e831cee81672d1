using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Data.Seeds;

/// <summary>Seed as it came in. Derived from the ledger.</summary>
public sealed class AccessionRow
{
    public long Id { get; set; }
    public required string Code { get; set; }
    public Guid? DonorId { get; set; }
    /// <summary>The library it came from; null for a donor's.</summary>
    public string? Library { get; set; }
    public DateOnly ReceivedOn { get; set; }
    public string? Species { get; set; }
    public string? DeclaredName { get; set; }
    public SeedSource Source { get; set; }
    public int? HarvestYear { get; set; }
    public SeedUnit Unit { get; set; }
    public long Received { get; set; }
    public long Stock { get; set; }
    public long? ThousandSeedMilligrams { get; set; }
    public bool IsVoid { get; set; }
}
