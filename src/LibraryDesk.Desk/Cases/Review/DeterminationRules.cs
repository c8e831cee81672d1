using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Lineage.Codes;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A determination somebody wants to make.</summary>
/// <param name="VarietyName">The variety wanted; null for a species.</param>
/// <param name="PacketCode">The packet whose lot is to give the variety; null without one.</param>
public sealed record DeterminationWanted(NamedTaxon Taxon, string? VarietyName, string? PacketCode);

/// <summary>What a packet that the case leads to says of the plant.</summary>
/// <param name="PacketCode">Code of the packet; the case has an origin clue with it that was not taken back.</param>
/// <param name="Species">Candidate id that the lot's standing name claims give; null where none names a species.</param>
/// <param name="VarietyNames">Varieties that the standing name claims of its lot give. Empty: the lot has no name to pass on.</param>
/// <param name="Fit">How well the traits alone go with the packet.</param>
/// <param name="IsTied">True when a stake, a scan or a grower's word ties the plant to it, not just the loan list.</param>
public sealed record OriginOfCase(string PacketCode, string? Species, IReadOnlyList<string> VarietyNames, Fit Fit, bool IsTied = false);

/// <summary>
/// Promise 1: a variety is never determined from looks. Whoever makes a determination, on whatever way, comes through here.
/// </summary>
public static class DeterminationRules
{
    public const string NeedsOriginCode = "determination.variety-needs-origin";
    public const string NotFromCaseCode = "determination.origin-not-of-this-case";
    public const string NameNotClaimedCode = "determination.lot-has-no-such-name";
    public const string OtherSpeciesCode = "determination.origin-of-another-species";
    public const string TraitsContradictCode = "determination.traits-contradict";
    public const string AkinCode = "determination.akin-is-no-variety";

    /// <summary>Null when it may be determined; else the rule that forbids it.</summary>
    /// <param name="wanted">What is to be determined.</param>
    /// <param name="guide">The crop guide of the case.</param>
    /// <param name="origins">Packets that the case's origin clues lead to.</param>
    public static Refusal? Check(DeterminationWanted wanted, CropGuide guide, IReadOnlyList<OriginOfCase> origins)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(guide);
        ArgumentNullException.ThrowIfNull(origins);
        if (!wanted.Taxon.Tells || guide.FindCandidate(wanted.Taxon.Taxon) is null) return UnknownTaxon;
        if (!Qualifiers.All.Contains(wanted.Taxon.Qualifier)) return ReviewRefusals.UnknownQualifier;
        var origin = Find(wanted.PacketCode, origins);
        if (!string.IsNullOrWhiteSpace(wanted.PacketCode) && origin is null) return NotFromCase(wanted.PacketCode);
        if (string.IsNullOrWhiteSpace(wanted.VarietyName)) return null;

        if (origin is null) return NeedsOrigin;
        if (!origin.VarietyNames.Contains(wanted.VarietyName, StringComparer.OrdinalIgnoreCase)) return NameNotClaimed(origin, wanted.VarietyName);
        if (origin.Species is not null && origin.Species != wanted.Taxon.Taxon) return OtherSpecies(origin, guide);
        if (wanted.Taxon.Qualifier == Qualifiers.Aff) return Akin;
        return origin.Fit == Fit.Fits ? null : TraitsContradict(origin);
    }

    /// <summary>True when the packet named with it may stand beside a species: its lot is of that species, or of none on record, and no trait speaks against it.</summary>
    public static bool Agrees(DeterminationWanted wanted, IReadOnlyList<OriginOfCase> origins) =>
        Find(wanted.PacketCode, origins) is { } origin && (origin.Species is null || origin.Species == wanted.Taxon.Taxon) && origin.Fit == Fit.Fits && wanted.Taxon.Qualifier != Qualifiers.Aff;

    private static OriginOfCase? Find(string? packet, IReadOnlyList<OriginOfCase> origins)
    {
        var code = PacketCode.Read(packet).Match(read => read.ToString(), _ => packet?.Trim());
        return origins.FirstOrDefault(origin => origin.PacketCode.Equals(code, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>
    /// What the origin adds to a determination that people made by looks: the packet, and the variety where its lot claims one. Only where
    /// the plant is tied to one packet and that passes <see cref="Check"/>; an off-type takes nothing from its packet.
    /// </summary>
    public static DeterminationWanted ByOrigin(NamedTaxon taxon, CropGuide guide, IReadOnlyList<OriginOfCase> origins)
    {
        ArgumentNullException.ThrowIfNull(origins);
        var looksAlone = new DeterminationWanted(taxon, null, null);
        if (origins.Where(origin => origin.IsTied).ToList() is not [var tied]) return looksAlone;
        if (tied.VarietyNames is [var variety])
        {
            var named = new DeterminationWanted(taxon, variety, tied.PacketCode);
            return Check(named, guide, origins) is null ? named : looksAlone;
        }
        var withPacket = looksAlone with { PacketCode = tied.PacketCode };
        return Agrees(withPacket, origins) ? withPacket : looksAlone;
    }

    private static Refusal UnknownTaxon { get; } = new(ReviewRefusals.UnknownTaxonCode, "Choose one of the candidates of this case's crop guide.");

    private static Refusal NeedsOrigin { get; } = new(
        NeedsOriginCode, "A variety can't be determined from looks. Add an origin first: a loan, or the code on a stake or packet that belongs to this plant.");

    private static Refusal Akin { get; } = new(
        AkinCode, "\"aff.\" says that the plant is not that species, so it cannot be a variety of it. Drop the variety or the qualifier.");

    private static Refusal NotFromCase(string code) => new(
        NotFromCaseCode, $"Nothing in this case leads to packet {code}. Add it to the origin clues, with how it belongs to the plant, then determine.");

    private static Refusal NameNotClaimed(OriginOfCase origin, string variety) => new(
        NameNotClaimedCode,
        $"No standing name claim calls the lot of packet {origin.PacketCode} '{variety}'. Determine the species here; a librarian can claim the name for the lot first.");

    private static Refusal OtherSpecies(OriginOfCase origin, CropGuide guide) => new(
        OtherSpeciesCode,
        $"Packet {origin.PacketCode} is claimed to be {guide.FindCandidate(origin.Species!)?.Name ?? origin.Species}. If the plant is another species, determine that species without a variety: that is how a mix-up shows.");

    private static Refusal TraitsContradict(OriginOfCase origin) => new(
        TraitsContradictCode,
        $"What was seen speaks against packet {origin.PacketCode}, so its name cannot pass to this plant. Determine the species without a variety, or look again at what contradicts.");
}
