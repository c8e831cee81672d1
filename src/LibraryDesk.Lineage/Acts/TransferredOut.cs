using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Seed left for another library: a holder to be told when it is recalled.</summary>
/// <param name="Node">The lot or packet.</param>
/// <param name="Seed">How much, in its unit.</param>
/// <param name="Library">The other library, as it calls itself.</param>
/// <param name="SentOn">The day.</param>
public sealed record TransferredOut(NodeId Node, Quantity Seed, string Library, DateOnly SentOn) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.TransferredOut;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Node];
}
