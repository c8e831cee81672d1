using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Seed of a grow-out came back. It lies with the grow-out until a lot is made of it.</summary>
/// <param name="GrowOut">The grow-out.</param>
/// <param name="Loan">The loan it ends; null for a return without a loan.</param>
/// <param name="By">Who brought it; null when not known.</param>
/// <param name="ReturnedOn">The day; not before the sowing.</param>
/// <param name="Seed">How much.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 of these seeds in milligrams; null when not known.</param>
public sealed record Returned(GrowOutId GrowOut, LoanId? Loan, PersonId? By, DateOnly ReturnedOn, Quantity Seed, long? ThousandSeedMilligrams) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Returned;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [GrowOut.Node];
}
