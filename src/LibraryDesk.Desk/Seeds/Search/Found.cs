using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>A typed word, and what it was taken for.</summary>
/// <param name="Typed">As typed, made plain.</param>
/// <param name="TakenFor">The nearest word in use; equal to <paramref name="Typed"/> where that is one, null where nothing is near.</param>
public sealed record SearchedWord(string Typed, string? TakenFor)
{
    /// <summary>True when it was spelled a little otherwise.</summary>
    public bool IsSlip => TakenFor is not null && TakenFor != Typed;
}

/// <summary>A name that was found.</summary>
/// <param name="Variety">The variety; empty for a species alone.</param>
/// <param name="Species">The guide's id; empty when not known.</param>
/// <param name="VarietyId">The library's record of it; null without one.</param>
public sealed record FoundName(string Variety, string Species, long? VarietyId);

/// <summary>A lot that was found.</summary>
/// <param name="Year">The year its seed ripened, or it was made.</param>
/// <param name="OnShelf">Packets free on the shelf.</param>
public sealed record FoundLot(string Code, GoesBy Name, int Year, int OnShelf);

/// <summary>A packet that was found.</summary>
public sealed record FoundPacket(string Code, GoesBy Name, PacketStanding Standing);

/// <summary>An accession that was found by its code or its donor.</summary>
/// <param name="DeclaredName">The name it came under; null without one.</param>
/// <param name="Donor">Who gave it; null for readers who do not see people, and when not known.</param>
/// <param name="LotCode">The first lot made of it; null when none was.</param>
public sealed record FoundAccession(string Code, string? DeclaredName, DateOnly ReceivedOn, string? Donor, string? LotCode);

/// <summary>Everything that was found.</summary>
/// <param name="Query">As typed, trimmed.</param>
/// <param name="Words">The words and what they were taken for.</param>
/// <param name="WrongCode">Why what looks like a code is none; null otherwise.</param>
/// <param name="Names">Names, best first.</param>
/// <param name="Lots">Lots, best name first, newest first.</param>
/// <param name="MoreLots">True when there are more lots than shown.</param>
/// <param name="Packets">Packets by code, then packets on the shelf of the lots found.</param>
/// <param name="Accessions">By code, and for librarians by donor.</param>
public sealed record Found(
    string Query,
    IReadOnlyList<SearchedWord> Words,
    Refusal? WrongCode,
    IReadOnlyList<FoundName> Names,
    IReadOnlyList<FoundLot> Lots,
    bool MoreLots,
    IReadOnlyList<FoundPacket> Packets,
    IReadOnlyList<FoundAccession> Accessions)
{
    /// <summary>How many things were found.</summary>
    public int Count => Names.Count + Lots.Count + Packets.Count + Accessions.Count;

    internal static Found Nothing(string query) => new(query, [], null, [], [], false, [], []);
}
