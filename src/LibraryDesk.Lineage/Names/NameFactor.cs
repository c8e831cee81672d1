using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Names;

/// <summary>One step on the way of a name: what could have gone wrong there, or what was checked.</summary>
/// <param name="Node">Where.</param>
/// <param name="Kind">What.</param>
/// <param name="RateId">The rate it used; null where it rests on counts alone.</param>
/// <param name="Rate">The rate's value, or for a blend the share of the part, or for a check the share that fitted.</param>
/// <param name="NoSwap">The chance, after this step, that the lot is no other variety altogether.</param>
/// <param name="Purity">The share of seeds true to name, after this step.</param>
public sealed record NameFactor(NodeId Node, NameFactorKind Kind, string? RateId, double Rate, double NoSwap, double Purity);

/// <summary>What a step on the way of a name is.</summary>
public enum NameFactorKind
{
    /// <summary>Whose word it came in under.</summary>
    Arrival,

    /// <summary>Parts were blended.</summary>
    Blend,

    /// <summary>Packets were labelled.</summary>
    Packing,

    /// <summary>It was grown: plants could be mixed up.</summary>
    GrowOut,

    /// <summary>It could cross with others.</summary>
    Crossing,

    /// <summary>Seed was saved from a hybrid.</summary>
    Hybrid,

    /// <summary>Off-types were looked for and counted.</summary>
    Check,

    /// <summary>Off-types were taken out.</summary>
    Roguing,

    /// <summary>Plants of it were determined.</summary>
    Determined,
}
