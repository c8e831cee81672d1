using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>An earlier entry was undone, or said again rightly. The earlier entry stays in the ledger as it was.</summary>
/// <param name="Entry">The number of the earlier entry.</param>
/// <param name="Why">In words, without anything about a person.</param>
/// <param name="Was">What the earlier entry said, so that a replay can undo it without looking back.</param>
/// <param name="Instead">What it should have said, of the same kind and about the same ids; null to undo it and no more.</param>
public sealed record Corrected(long Entry, string Why, ActText Was, ActText? Instead) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Corrected;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => Instead is null ? Was.Act.Subjects : Was.Act.Subjects.Concat(Instead.Act.Subjects);
}

/// <summary>An act inside another, with its kind, so that it can be read back.</summary>
/// <param name="Act">The act.</param>
public sealed record ActText(SeedAct Act);
