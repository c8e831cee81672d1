using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Keeps a node, and all downstream of it, from lending.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Node">The accession, lot or packet.</param>
/// <param name="Reason">Why.</param>
/// <param name="HeldOn">The day.</param>
/// <param name="ReleasedOn">The day it was lifted; null while it stands.</param>
/// <param name="ReleasedWhy">Why it was lifted; null while it stands.</param>
/// <param name="IsVoid">True when its entry was undone: it never was.</param>
public sealed record Hold(HoldId Id, NodeId Node, HoldReason Reason, DateOnly HeldOn, DateOnly? ReleasedOn, string? ReleasedWhy, bool IsVoid = false)
{
    /// <summary>True while it stops lending.</summary>
    public bool Stands => ReleasedOn is null && !IsVoid;
}
