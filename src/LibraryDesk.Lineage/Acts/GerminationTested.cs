using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A germination test was read.</summary>
/// <param name="Test">The new test.</param>
/// <param name="Lot">The lot.</param>
/// <param name="ReadOn">The day of the last count; not before the lot was made.</param>
/// <param name="Replicates">Seeds sown and germinated in each replicate; one for a home test.</param>
/// <param name="Days">Days from sowing to the last count; null when not told.</param>
/// <param name="Used">What left the lot for it, in the lot's unit; empty when the seed was set aside before.</param>
public sealed record GerminationTested(TestId Test, LotId Lot, DateOnly ReadOn, IReadOnlyList<TestReplicate> Replicates, int? Days, Quantity Used) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.GerminationTested;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Lot.Node];
}

/// <summary>One replicate of a germination test.</summary>
/// <param name="Sown">Seeds sown, 1 or more.</param>
/// <param name="Germinated">Of those, the ones that came up.</param>
public sealed record TestReplicate(int Sown, int Germinated);
