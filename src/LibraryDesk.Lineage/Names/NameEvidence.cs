using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Names;

/// <summary>What is known of the nodes above a name, beyond the graph.</summary>
/// <param name="Sources">How each accession reached the library.</param>
/// <param name="Growings">What each grow-out's grower told.</param>
/// <param name="Determined">Plants of a node that were determined: how many fit the name, how many are off. Nodes without any are absent.</param>
/// <param name="IsHybrid">True when the name is of a first-generation hybrid, which is not saved true.</param>
/// <param name="OutcrossingShare">The crop guide's figure for seed that crosses when nothing is done, 0 to 1; null to take the table's.</param>
public sealed record NameEvidence(
    IReadOnlyDictionary<NodeId, SeedSource> Sources,
    IReadOnlyDictionary<NodeId, GrowOutFacts> Growings,
    IReadOnlyDictionary<NodeId, (int Fits, int Off)> Determined,
    bool IsHybrid = false,
    double? OutcrossingShare = null)
{
    /// <summary>Parts of blends that go by another name than the blend does: none of their seed is true to its name.</summary>
    public IReadOnlySet<NodeId> UnderOtherNames { get; init; } = new HashSet<NodeId>();

    /// <summary>The evidence that a state holds, without determinations.</summary>
    public static NameEvidence Of(SeedState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return new(
            state.Accessions.ToDictionary(accession => accession.Id.Node, accession => accession.Source),
            state.GrowOuts.ToDictionary(growOut => growOut.Id.Node, growOut => growOut.Facts),
            new Dictionary<NodeId, (int, int)>());
    }
}
