using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Seed as it came in, from one donor or library, at one time, under one declared name.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Code">Its code.</param>
/// <param name="Donor">The donor; null when not known, or when it came from a library.</param>
/// <param name="Library">The library it came from; null for a donor's.</param>
/// <param name="ReceivedOn">The day it came in.</param>
/// <param name="Species">The species under the crop guide's id; null when not known.</param>
/// <param name="DeclaredName">The variety name it came under; null without one.</param>
/// <param name="Source">How it reached the library.</param>
/// <param name="HarvestYear">The year the seed ripened; null when not known.</param>
/// <param name="Received">How much came in.</param>
/// <param name="Stock">How much of it is not in a lot yet.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="IsVoid">True when its entry was undone: it never was.</param>
public sealed record Accession(
    AccessionId Id,
    AccessionCode Code,
    PersonId? Donor,
    string? Library,
    DateOnly ReceivedOn,
    string? Species,
    string? DeclaredName,
    SeedSource Source,
    int? HarvestYear,
    Quantity Received,
    Quantity Stock,
    long? ThousandSeedMilligrams,
    bool IsVoid = false);
