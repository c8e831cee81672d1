using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Seed came in from a donor.</summary>
/// <param name="Accession">The new accession.</param>
/// <param name="Code">Its code.</param>
/// <param name="Donor">The donor as an opaque id; null when nobody knows who gave it.</param>
/// <param name="ReceivedOn">The day it came in.</param>
/// <param name="Species">The species under the crop guide's id, such as <c>capsicum-annuum</c>; null when not known.</param>
/// <param name="DeclaredName">The variety name it came under; null when it came without one.</param>
/// <param name="Received">How much came in.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="Source">How it reached the library.</param>
/// <param name="HarvestYear">The year the seed ripened; null when not known.</param>
public sealed record Accessioned(
    AccessionId Accession,
    AccessionCode Code,
    PersonId? Donor,
    DateOnly ReceivedOn,
    string? Species,
    string? DeclaredName,
    Quantity Received,
    long? ThousandSeedMilligrams,
    SeedSource Source,
    int? HarvestYear) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Accessioned;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Accession.Node];
}

/// <summary>How seed reached the library: the kind of word that stands behind its declared name.</summary>
public enum SeedSource
{
    /// <summary>Handed over by somebody who grew it or knows where it came from.</summary>
    Donor,

    /// <summary>A swap table: a label, and nobody to ask.</summary>
    SwapTable,

    /// <summary>A packet from the trade.</summary>
    Trade,

    /// <summary>Another library.</summary>
    Library,

    /// <summary>Found, or not known.</summary>
    Unknown,
}
