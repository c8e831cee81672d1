using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>A packet taken home.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Packet">The packet.</param>
/// <param name="Borrower">Who took it.</param>
/// <param name="LentOn">The day.</param>
/// <param name="DueOn">When seed is hoped for; null when none is asked back.</param>
/// <param name="Ending">How it ended; null while it runs.</param>
/// <param name="EndedOn">When it ended; null while it runs.</param>
/// <param name="IsVoid">True when its entry was undone: it never was.</param>
public sealed record Loan(
    LoanId Id,
    PacketId Packet,
    PersonId Borrower,
    DateOnly LentOn,
    DateOnly? DueOn,
    LoanEnding? Ending,
    DateOnly? EndedOn,
    bool IsVoid = false)
{
    /// <summary>True while the packet is out under it.</summary>
    public bool IsOpen => Ending is null && !IsVoid;
}
