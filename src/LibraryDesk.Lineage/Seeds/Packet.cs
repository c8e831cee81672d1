using LibraryDesk.Lineage.Codes;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Seed put up from a lot, under a code.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Code">Its code.</param>
/// <param name="Lot">The lot it was put up from.</param>
/// <param name="Packing">The ledger entry of its packing: packets of one packing could have had their labels swapped.</param>
/// <param name="PackedOn">The day it was put up.</param>
/// <param name="Held">How much was put in.</param>
/// <param name="Stock">How much is in it as far as known; nothing once it was sown or used.</param>
/// <param name="Standing">Where it stands in its life.</param>
/// <param name="Holder">Who has it, or had it last; null while it never left the shelf or came back unopened.</param>
/// <param name="Loan">The loan under way, or the last one; null with <paramref name="Holder"/>.</param>
/// <param name="Request">The request it waits for; null when it waits for none.</param>
/// <param name="Place">Where it is kept; null when not said.</param>
public sealed record Packet(
    PacketId Id,
    PacketCode Code,
    LotId Lot,
    long Packing,
    DateOnly PackedOn,
    Quantity Held,
    Quantity Stock,
    PacketStanding Standing,
    PersonId? Holder,
    LoanId? Loan,
    RequestId? Request,
    string? Place);

/// <summary>Where a packet stands in its life.</summary>
public enum PacketStanding
{
    /// <summary>On the shelf, free to lend.</summary>
    OnShelf,

    /// <summary>On the shelf, kept for a request.</summary>
    Picked,

    /// <summary>With a borrower.</summary>
    Lent,

    /// <summary>Sown, eaten, or not heard of again.</summary>
    Used,

    /// <summary>Thrown away.</summary>
    Discarded,

    /// <summary>With another library.</summary>
    Transferred,

    /// <summary>Its packing was undone: it never was.</summary>
    Void,
}
