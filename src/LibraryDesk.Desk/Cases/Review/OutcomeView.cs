using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>What became of a case, as far as the reader may see.</summary>
/// <param name="Guide">The guide the case was, or is, judged by.</param>
/// <param name="Sealed">Opinions of this round.</param>
/// <param name="Needed">Concordant opinions that this library asks for.</param>
/// <param name="Opinions">What they say; null while they are covered from this reader.</param>
/// <param name="Determination">The one that stands; null without.</param>
/// <param name="Earlier">Superseded ones, the newest first.</param>
/// <param name="Suggestions">Null while they are covered from this reader.</param>
/// <param name="Learned">The closing note; null while not closed.</param>
/// <param name="MayClaim">True where a librarian can make the determination a name claim for the lot.</param>
public sealed record OutcomeView(
    long CaseId,
    CaseState State,
    CropGuide Guide,
    int Sealed,
    int Needed,
    IReadOnlyList<OpinionSeen>? Opinions,
    DeterminationRow? Determination,
    IReadOnlyList<DeterminationRow> Earlier,
    IReadOnlyList<SuggestionSeen>? Suggestions,
    string? Learned,
    bool MaySuggest,
    bool MayReopen,
    bool MayClose,
    bool MayClaim)
{
    /// <summary>For the desk: the lot whose packet the determined plant is tied to; null without one, or for readers who do not run the desk.</summary>
    public TiedLot? Tied { get; init; }

    /// <summary>True where a librarian can claim the species alone for a lot, because no packet ties the plant to one.</summary>
    public bool MayClaimSpecies { get; init; }
}

/// <summary>The lot of a determined plant.</summary>
/// <param name="Code">Its code.</param>
/// <param name="PacketCode">The packet.</param>
/// <param name="Contradicts">True when the plant is of another species than the lot is said to be.</param>
public sealed record TiedLot(string Code, string PacketCode, bool Contradicts);
