using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A packet was handed over.</summary>
/// <param name="Loan">The new loan.</param>
/// <param name="Packet">The packet.</param>
/// <param name="Borrower">Who has it now.</param>
/// <param name="LentOn">The day.</param>
/// <param name="DueOn">When seed is hoped for; null when none is asked back.</param>
/// <param name="Request">The request it answers; null when it was taken from the shelf.</param>
public sealed record Lent(LoanId Loan, PacketId Packet, PersonId Borrower, DateOnly LentOn, DateOnly? DueOn, RequestId? Request) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Lent;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Packet.Node];
}
