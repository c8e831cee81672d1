using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>A name asserted for an accession or a lot.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Node">The accession or lot.</param>
/// <param name="Species">The species claimed; null when silent about it.</param>
/// <param name="Variety">The variety claimed; null for a species alone.</param>
/// <param name="Grounds">What it rests on.</param>
/// <param name="By">Who said so; null when the label alone says so.</param>
/// <param name="ClaimedOn">The day.</param>
/// <param name="Evidence">The determination behind it; null without one.</param>
/// <param name="IsWithdrawn">True when it was taken back by a correction. It stays on the list.</param>
public sealed record NameClaim(
    ClaimId Id,
    NodeId Node,
    string? Species,
    string? Variety,
    ClaimGrounds Grounds,
    PersonId? By,
    DateOnly ClaimedOn,
    DeskEvidence? Evidence,
    bool IsWithdrawn = false);
