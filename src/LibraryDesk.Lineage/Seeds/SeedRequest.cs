namespace LibraryDesk.Lineage.Seeds;

/// <summary>A member's wish for a packet of a lot.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Lot">The lot.</param>
/// <param name="By">Who asked.</param>
/// <param name="Picked">The packet picked for it; null while none is.</param>
/// <param name="Loan">The loan that answered it; null while it waits.</param>
/// <param name="IsVoid">True when its entry was undone.</param>
public sealed record SeedRequest(RequestId Id, LotId Lot, PersonId By, PacketId? Picked, LoanId? Loan, bool IsVoid = false);
