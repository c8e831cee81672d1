using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Data.Seeds;

/// <summary>The growing of seed for seed. Derived from the ledger. Null facts were not told.</summary>
public sealed class GrowOutRow
{
    public long Id { get; set; }
    public long FromId { get; set; }
    public long? LoanId { get; set; }
    public Guid? GrowerId { get; set; }
    public DateOnly SownOn { get; set; }
    public long Sown { get; set; }
    public SeedUnit SownUnit { get; set; }
    public int? PlantsGrown { get; set; }
    public int? PlantsSavedFrom { get; set; }
    public int? OffTypesSeen { get; set; }
    public int? OffTypesRemoved { get; set; }
    public Isolation Isolation { get; set; }
    public int? NearestMetres { get; set; }
    public bool? OthersInFlower { get; set; }
    public HarvestManner Manner { get; set; }
    public DateOnly? HarvestedOn { get; set; }
    public bool? SownLater { get; set; }
    public SeedUnit? HarvestUnit { get; set; }
    public long? Harvest { get; set; }
    public long? Stock { get; set; }
    public long? ThousandSeedMilligrams { get; set; }
    public bool IsVoid { get; set; }
}
