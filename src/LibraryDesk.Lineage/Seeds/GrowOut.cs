using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>The growing of seed for seed.</summary>
/// <param name="Id">Its number.</param>
/// <param name="From">The packet or lot it was sown from.</param>
/// <param name="Loan">The loan it grew from; null without one.</param>
/// <param name="Grower">Who grew it; null when not known.</param>
/// <param name="SownOn">The day of sowing, or the earliest it can be where the facts say so.</param>
/// <param name="Sown">What was sown.</param>
/// <param name="Facts">What the grower told.</param>
/// <param name="Harvest">All seed that came back of it; null while none did.</param>
/// <param name="Stock">How much of the harvest is not in a lot yet; null while none came back.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds of the harvest in milligrams; null when not known.</param>
/// <param name="IsVoid">True when its entry was undone: it never was.</param>
public sealed record GrowOut(
    GrowOutId Id,
    NodeId From,
    LoanId? Loan,
    PersonId? Grower,
    DateOnly SownOn,
    Quantity Sown,
    GrowOutFacts Facts,
    Quantity? Harvest,
    Quantity? Stock,
    long? ThousandSeedMilligrams,
    bool IsVoid = false);
