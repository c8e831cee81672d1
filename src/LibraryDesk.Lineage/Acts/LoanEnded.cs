using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A loan came to its end.</summary>
/// <param name="Loan">The loan.</param>
/// <param name="Packet">Its packet.</param>
/// <param name="Ending">How it ended.</param>
/// <param name="EndedOn">The day; not before the loan.</param>
/// <param name="Used">What was still in the packet and is counted as used up; empty when it was sown before, or came back.</param>
public sealed record LoanEnded(LoanId Loan, PacketId Packet, LoanEnding Ending, DateOnly EndedOn, Quantity Used) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.LoanEnded;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Packet.Node];
}

/// <summary>How a loan ended. None of these is a fault of the borrower's.</summary>
public enum LoanEnding
{
    /// <summary>Seed of a new harvest came back.</summary>
    ReturnedSeed,

    /// <summary>The packet came back unopened and goes on the shelf again.</summary>
    BroughtBack,

    /// <summary>The sowing or the plants failed.</summary>
    Failed,

    /// <summary>The crop was eaten, no seed kept.</summary>
    Eaten,

    /// <summary>Nothing came back and nothing was heard.</summary>
    NothingCameBack,
}
