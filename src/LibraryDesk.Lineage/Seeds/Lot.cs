using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Seed of one harvest, or of one accession, kept together.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Code">Its code.</param>
/// <param name="Origin">How it was made.</param>
/// <param name="Species">The species of all of it; null when not known.</param>
/// <param name="MadeOn">The day it was made.</param>
/// <param name="Made">How much it was at first.</param>
/// <param name="Stock">How much is left.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="Place">Where it is kept; null when not said.</param>
/// <param name="IsVoid">True when its entry was undone: it never was.</param>
public sealed record Lot(
    LotId Id,
    LotCode Code,
    LotOrigin Origin,
    string? Species,
    DateOnly MadeOn,
    Quantity Made,
    Quantity Stock,
    long? ThousandSeedMilligrams,
    string? Place,
    bool IsVoid = false);
