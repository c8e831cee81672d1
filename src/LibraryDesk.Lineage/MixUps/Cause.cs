using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>What kind of event parted a name from its seed.</summary>
public enum CauseKind
{
    /// <summary>The seed came in under a wrong name.</summary>
    ArrivedWrong,

    /// <summary>The seed came in mixed, or as a hybrid's, and does not come up all alike.</summary>
    ArrivedMixed,

    /// <summary>Labels were swapped at one packing: some of its packets hold other seed.</summary>
    SwappedAtPacking,

    /// <summary>The plants of a grow-out were not of the seed they were taken for.</summary>
    SwappedAtGrowOut,

    /// <summary>A grow-out crossed with another variety.</summary>
    CrossedAtGrowOut,

    /// <summary>The borrower's own label was lost or mixed up: their plants are not of the packet.</summary>
    LabelLost,
}

/// <summary>One event that may have happened.</summary>
/// <param name="Kind">What.</param>
/// <param name="Node">Where: the accession or grow-out; for a packing the lot it was put up from; for a lost label the packet.</param>
/// <param name="Packing">The ledger entry of the packing; null for all other kinds.</param>
/// <param name="RateId">The rate in the table behind <paramref name="Prior"/>.</param>
/// <param name="Prior">How likely it was before any plant was looked at.</param>
/// <param name="Share">What share of the seed, or of the packets, it makes off.</param>
public sealed record Cause(CauseKind Kind, NodeId Node, long? Packing, string RateId, double Prior, SharePrior Share);

/// <summary>What is believed beforehand of the share phi that a cause makes off: all of it, or a beta distribution.</summary>
/// <param name="Alpha">First parameter, 1 or more; 0 for "all of it".</param>
/// <param name="Beta">Second parameter, 1 or more; 0 for "all of it".</param>
public readonly record struct SharePrior(double Alpha, double Beta)
{
    /// <summary>Everything is off.</summary>
    public static SharePrior All => default;

    /// <summary>Any share alike.</summary>
    public static SharePrior Any => new(1, 1);

    /// <summary>Rather few: a quarter on average.</summary>
    public static SharePrior Few => new(1, 3);

    /// <summary>True when everything is off.</summary>
    public bool IsAll => Alpha == 0;
}
