namespace LibraryDesk.Data.Seeds;

/// <summary>A germination test of a lot. Derived from the ledger.</summary>
public sealed class GerminationTestRow
{
    public long Id { get; set; }
    public long LotId { get; set; }
    public DateOnly ReadOn { get; set; }
    /// <summary>Germinated of sown in each replicate, as in "48/50 47/50".</summary>
    public required string Replicates { get; set; }
    public int Sown { get; set; }
    public int Germinated { get; set; }
    public int? Days { get; set; }
    public bool IsVoid { get; set; }
}
