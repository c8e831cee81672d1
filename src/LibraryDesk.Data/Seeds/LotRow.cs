using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Data.Seeds;

/// <summary>Seed of one harvest or accession kept together. Derived from the ledger.</summary>
public sealed class LotRow
{
    public long Id { get; set; }
    public required string Code { get; set; }
    public LotOrigin Origin { get; set; }
    public string? Species { get; set; }
    public DateOnly MadeOn { get; set; }
    public SeedUnit Unit { get; set; }
    public long Made { get; set; }
    public long Stock { get; set; }
    public long? ThousandSeedMilligrams { get; set; }
    public string? Place { get; set; }
    public bool IsVoid { get; set; }
}

/// <summary>Seed of one node went into another. Derived from the ledger.</summary>
public sealed class LineageEdgeRow
{
    public long ParentId { get; set; }
    public long ChildId { get; set; }
    /// <summary>Part of the child's seed that came from this parent, 0 to 1.</summary>
    public double Share { get; set; }
    public long SeedCount { get; set; }
}
