namespace LibraryDesk.Lineage.Seeds;

/// <summary>Seed of one node went into another.</summary>
/// <param name="Parent">Where the seed came from.</param>
/// <param name="Child">What was made of it. Its number is above the parent's, always.</param>
/// <param name="Share">The part of the child's seed, by seed count, that came from this parent: above 0, at most 1; the shares of one child sum to 1.</param>
/// <param name="SeedCount">The seeds that went over, counted or reckoned; milligrams where no seed weight is known. 0 when not known.</param>
public sealed record LineageEdge(NodeId Parent, NodeId Child, double Share, long SeedCount);
