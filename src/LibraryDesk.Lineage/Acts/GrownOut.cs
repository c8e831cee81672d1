using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>Seed was grown for seed.</summary>
/// <param name="GrowOut">The new grow-out.</param>
/// <param name="From">The packet, or the lot when the library grew it itself.</param>
/// <param name="Loan">The loan it grew from; null without one.</param>
/// <param name="Grower">Who grew it; null when not known.</param>
/// <param name="SownOn">The day of sowing, or the earliest it can be, see <see cref="GrowOutFacts.SownLater"/>; not before the packet or lot was made.</param>
/// <param name="Sown">How much was sown; a packet counts as sown whole.</param>
/// <param name="Facts">What the grower told.</param>
public sealed record GrownOut(GrowOutId GrowOut, NodeId From, LoanId? Loan, PersonId? Grower, DateOnly SownOn, Quantity Sown, GrowOutFacts Facts) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.GrownOut;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => [GrowOut.Node, From];
}

/// <summary>What is known of a growing. Null means not told, never none.</summary>
/// <param name="PlantsGrown">Plants that stood.</param>
/// <param name="PlantsSavedFrom">Plants whose seed was kept: this, not the plants grown, is the N of population figures.</param>
/// <param name="OffTypesSeen">Plants that were not what the name promises.</param>
/// <param name="OffTypesRemoved">Of those, the ones taken out before they could shed pollen or be harvested.</param>
/// <param name="Isolation">How it was kept from crossing.</param>
/// <param name="NearestMetres">Distance to the nearest other variety that can cross with it, in metres.</param>
/// <param name="OthersInFlower">Whether such a variety flowered at the same time.</param>
/// <param name="Harvest">How seed was taken from the plants.</param>
/// <param name="HarvestedOn">The day of the last harvest; not before the sowing.</param>
/// <param name="SownLater">True when the day of sowing was not told, and the day written down is the earliest it can be.</param>
public sealed record GrowOutFacts(
    int? PlantsGrown,
    int? PlantsSavedFrom,
    int? OffTypesSeen,
    int? OffTypesRemoved,
    Isolation Isolation,
    int? NearestMetres,
    bool? OthersInFlower,
    HarvestManner Harvest,
    DateOnly? HarvestedOn = null,
    bool? SownLater = null)
{
    /// <summary>Nothing was told.</summary>
    public static GrowOutFacts NotTold { get; } = new(null, null, null, null, Isolation.NotTold, null, null, HarvestManner.NotTold);
}

/// <summary>How a growing was kept from crossing.</summary>
public enum Isolation
{
    /// <summary>Not told.</summary>
    NotTold,

    /// <summary>Open, nothing done.</summary>
    Open,

    /// <summary>By distance alone.</summary>
    Distance,

    /// <summary>Flowers or branches in bags.</summary>
    Bagged,

    /// <summary>Plants under a cage or net.</summary>
    Caged,

    /// <summary>Pollinated by hand, flowers closed before and after.</summary>
    HandPollinated,

    /// <summary>Flowering at another time than its neighbours.</summary>
    Time,
}

/// <summary>How seed was taken from the plants; sets the variance of the plants' contributions.</summary>
public enum HarvestManner
{
    /// <summary>Not told: reckoned as if bulked.</summary>
    NotTold,

    /// <summary>All seed together.</summary>
    Bulked,

    /// <summary>The same amount from each plant.</summary>
    SameFromEach,
}
