using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Names;

/// <summary>How sure the name of a node is. Two doubts, kept apart.</summary>
/// <param name="Node">The node.</param>
/// <param name="NoSwap">The chance that the seed is not another variety altogether; after a blend, averaged over its seed.</param>
/// <param name="Purity">The share of seeds true to name if it is not.</param>
/// <param name="Factors">How it came to that, oldest first, for the screen.</param>
public sealed record NameConfidence(NodeId Node, double NoSwap, PurityBelief Purity, IReadOnlyList<NameFactor> Factors)
{
    /// <summary>The chance that one seed, drawn blindly, is what the name says.</summary>
    public double OneSeed => NoSwap * Purity.Mean;
}
