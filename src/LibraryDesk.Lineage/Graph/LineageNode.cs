using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Graph;

/// <summary>What a node of the lineage is.</summary>
public enum NodeKind
{
    /// <summary>Seed as it came in.</summary>
    Accession,

    /// <summary>Seed of one harvest or accession kept together.</summary>
    Lot,

    /// <summary>Seed put up under a code.</summary>
    Packet,

    /// <summary>A growing for seed.</summary>
    GrowOut,
}

/// <summary>One node of the lineage.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Label">Its code, or for a grow-out a short word such as "24 plants".</param>
/// <param name="On">The day it came to be.</param>
public sealed record LineageNode(NodeId Id, NodeKind Kind, string Label, DateOnly On);
