using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Lending was stopped for a node and everything downstream of it.</summary>
/// <param name="Hold">The new hold.</param>
/// <param name="Node">The accession, lot or packet.</param>
/// <param name="Reason">Why.</param>
/// <param name="HeldOn">The day.</param>
public sealed record Held(HoldId Hold, NodeId Node, HoldReason Reason, DateOnly HeldOn) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Held;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node];
}

/// <summary>Why seed is held.</summary>
public enum HoldReason
{
    /// <summary>New seed waits until it was looked at.</summary>
    IntakeQuarantine,

    /// <summary>The name is in doubt.</summary>
    NameInDoubt,

    /// <summary>A seed-borne disease or pest is feared.</summary>
    Health,

    /// <summary>Too little is left to lend.</summary>
    LowStock,

    /// <summary>It germinates too poorly to lend.</summary>
    LowGermination,

    /// <summary>It was recalled.</summary>
    Recall,

    /// <summary>Law or an agreement stops it.</summary>
    Legal,
}
