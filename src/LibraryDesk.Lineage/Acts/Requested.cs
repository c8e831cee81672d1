using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A member asked for a packet of a lot.</summary>
/// <param name="Request">The new request.</param>
/// <param name="Lot">The lot.</param>
/// <param name="By">Who asked.</param>
public sealed record Requested(RequestId Request, LotId Lot, PersonId By) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Requested;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Lot.Node];
}
