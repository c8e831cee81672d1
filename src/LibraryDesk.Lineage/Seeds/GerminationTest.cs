using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>A germination test of a lot.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Lot">The lot.</param>
/// <param name="ReadOn">The day of the last count.</param>
/// <param name="Replicates">Seeds sown and germinated in each replicate.</param>
/// <param name="Days">Days from sowing to the last count; null when not told.</param>
/// <param name="IsVoid">True when its entry was undone.</param>
public sealed record GerminationTest(TestId Id, LotId Lot, DateOnly ReadOn, IReadOnlyList<TestReplicate> Replicates, int? Days, bool IsVoid = false)
{
    /// <summary>Seeds sown in all replicates.</summary>
    public int Sown => Replicates.Sum(replicate => replicate.Sown);

    /// <summary>Seeds that came up in all replicates.</summary>
    public int Germinated => Replicates.Sum(replicate => replicate.Germinated);
}
