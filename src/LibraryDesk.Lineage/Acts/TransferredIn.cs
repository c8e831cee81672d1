using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Seed came in from another library. It starts an accession here; its own chain stays with the other library and is named by its head.</summary>
/// <param name="Accession">The new accession.</param>
/// <param name="Code">Its code here.</param>
/// <param name="Library">The other library, as it calls itself.</param>
/// <param name="ForeignCode">The code on the seed as it came.</param>
/// <param name="ForeignHead">The head of the other library's chain, as printed by <see cref="ChainHead.ToString"/>; null when it keeps none.</param>
/// <param name="ReceivedOn">The day it came in.</param>
/// <param name="Species">The species under the crop guide's id; null when not known.</param>
/// <param name="DeclaredName">The variety name it came under; null when it came without one.</param>
/// <param name="Received">How much came in.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
public sealed record TransferredIn(
    AccessionId Accession,
    AccessionCode Code,
    string Library,
    string ForeignCode,
    string? ForeignHead,
    DateOnly ReceivedOn,
    string? Species,
    string? DeclaredName,
    Quantity Received,
    long? ThousandSeedMilligrams) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.TransferredIn;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Accession.Node];
}
