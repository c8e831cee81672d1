using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Data.Seeds;

/// <summary>A packet taken home. Derived from the ledger.</summary>
public sealed class LoanRow
{
    public long Id { get; set; }
    public long PacketId { get; set; }
    public Guid BorrowerId { get; set; }
    public DateOnly LentOn { get; set; }
    public DateOnly? DueOn { get; set; }
    public LoanEnding? Ending { get; set; }
    public DateOnly? EndedOn { get; set; }
    public bool IsVoid { get; set; }
}

/// <summary>A member's wish for a packet of a lot. Derived from the ledger.</summary>
public sealed class SeedRequestRow
{
    public long Id { get; set; }
    public long LotId { get; set; }
    public Guid ById { get; set; }
    public long? PickedPacketId { get; set; }
    public long? LoanId { get; set; }
    public bool IsVoid { get; set; }
}
