using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A lot was made. Its seed is the sum of what its sources gave: nothing appears and nothing is lost.</summary>
/// <param name="Lot">The new lot.</param>
/// <param name="Code">Its code.</param>
/// <param name="Origin">How it was made.</param>
/// <param name="Sources">Where the seed was taken from; one, or two and more for a blend.</param>
/// <param name="Species">The species of all of it; null when not known.</param>
/// <param name="MadeOn">The day; not before any source began.</param>
/// <param name="Unit">What this lot is counted in all its life.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="Place">Where it is kept, such as a drawer; null when not said.</param>
public sealed record LotMade(
    LotId Lot,
    LotCode Code,
    LotOrigin Origin,
    IReadOnlyList<LotSource> Sources,
    string? Species,
    DateOnly MadeOn,
    SeedUnit Unit,
    long? ThousandSeedMilligrams,
    string? Place) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.LotMade;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [Lot.Node, .. Sources.Select(source => source.From)];
}

/// <summary>How a lot was made.</summary>
public enum LotOrigin
{
    /// <summary>From an accession, as it came in.</summary>
    Intake,

    /// <summary>From the harvest of a grow-out.</summary>
    Harvest,

    /// <summary>Part of another lot.</summary>
    Split,

    /// <summary>Two lots or more put together.</summary>
    Blend,
}

/// <summary>What one source gave to a new lot.</summary>
/// <param name="From">An accession, a grow-out or a lot.</param>
/// <param name="Taken">What left the source, in the source's unit.</param>
/// <param name="Given">What arrived, in the new lot's unit: the same amount, or converted by seed weight.</param>
/// <param name="SeedCount">The seeds in it, counted or reckoned from seed weight, for the share of each source. Where no seed weight is known, milligrams stand in for all sources alike.</param>
public sealed record LotSource(NodeId From, Quantity Taken, Quantity Given, long SeedCount);
