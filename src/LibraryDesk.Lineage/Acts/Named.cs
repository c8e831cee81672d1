using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>A name was claimed for an accession or a lot. Claims stand beside each other; none is ever erased.</summary>
/// <param name="Claim">The new claim.</param>
/// <param name="Node">The accession or lot.</param>
/// <param name="Species">The species claimed, under the crop guide's id; null when the claim is silent about it.</param>
/// <param name="Variety">The variety claimed; null for a claim of a species alone.</param>
/// <param name="Grounds">What kind of evidence it rests on.</param>
/// <param name="By">Who said so; null when the label alone says so.</param>
/// <param name="ClaimedOn">The day.</param>
/// <param name="Evidence">The determination behind it; only and always for <see cref="ClaimGrounds.DeskDetermination"/>.</param>
public sealed record Named(
    ClaimId Claim,
    NodeId Node,
    string? Species,
    string? Variety,
    ClaimGrounds Grounds,
    PersonId? By,
    DateOnly ClaimedOn,
    DeskEvidence? Evidence) : SeedAct
{
    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Named;

    /// <inheritdoc/>
    public override IEnumerable<NodeId> Subjects => Evidence?.Origin is { } origin ? [Node, origin] : [Node];
}

/// <summary>What a name claim rests on.</summary>
public enum ClaimGrounds
{
    /// <summary>The donor said so.</summary>
    DonorsWord,

    /// <summary>The label says so, and nobody stands behind it.</summary>
    LabelOnly,

    /// <summary>Somebody who grew it says it is true to its name.</summary>
    GrowersWord,

    /// <summary>The desk determined a plant of it.</summary>
    DeskDetermination,
}

/// <summary>The determination behind a claim.</summary>
/// <param name="Case">The case's number, as the desk writes it.</param>
/// <param name="Link">What ties the plant to the library's seed; null for looks alone, which can claim a species but never a variety.</param>
/// <param name="Origin">The packet, lot or accession that the link leads to; null with <paramref name="Link"/>.</param>
/// <param name="Fits">True when no trait of the plant contradicts the name.</param>
/// <param name="GuideVersion">The crop guide version it was judged by.</param>
public sealed record DeskEvidence(string Case, OriginLink? Link, NodeId? Origin, bool Fits, string? GuideVersion);

/// <summary>What ties a plant to the library's seed.</summary>
public enum OriginLink
{
    /// <summary>A loan of the member's.</summary>
    Loan,

    /// <summary>The code on the packet or stake.</summary>
    PacketCode,

    /// <summary>A record of the donor's that leads to a lot.</summary>
    DonorRecord,
}
