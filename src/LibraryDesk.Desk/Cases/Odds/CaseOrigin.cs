using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Cases.Odds;

/// <summary>A packet of the origin clues, with what the library knows of it.</summary>
/// <param name="Variety">The name it goes by; null when it has none.</param>
/// <param name="Species">Candidate id of the guide; null when not known.</param>
/// <param name="IsTied">True when a stake, a scan or a grower's word ties the plant to it.</param>
public sealed record CluePacket(string Code, string? Variety, string? Species, bool IsTied);

/// <summary>The origin clues of a case as a prior.</summary>
/// <param name="Prior">The guide's own shares where no clue leads to a packet.</param>
/// <param name="Packets">The packets in question, in the order of the clues.</param>
public sealed record CaseOrigin(Prior Prior, IReadOnlyList<CluePacket> Packets)
{
    // Judgement, no source: to be learned from closed cases of known origin. A stake can be moved and a loan can be one of several sources.
    private const double TiedPlant = 0.95;
    private const double OwnLoans = 0.70;
    private const double OwnLoansAmongOtherSources = 0.45;

    // Judgement, no source: how often a packet holds the species its name says. The rest goes by the guide's shares.
    private const double NameHolds = 0.92;

    public static CaseOrigin None { get; } = new(Prior.OfGuide, []);

    /// <summary>Reads what stands behind the packets of the clues; two queries, none when no clue names a packet.</summary>
    public static async Task<CaseOrigin> ReadAsync(LibraryDbContext db, CompiledGuide guide, IReadOnlyList<OriginClueRow> clues, CancellationToken stop)
    {
        var standing = clues.Where(c => c.TakenBackAt is null).ToList();
        var codes = standing.Where(c => c.PacketCode is not null).Select(c => c.PacketCode!).Distinct().ToArray();
        if (codes.Length == 0) return None;
        var packets = await db.Set<PacketRow>()
            .Where(p => codes.Contains(p.Code) && p.Standing != PacketStanding.Void)
            .Select(p => new { p.Code, p.LotId })
            .ToListAsync(stop);
        var names = await LineageNames.OfAsync(db, [.. packets.Select(p => p.LotId).Distinct()], stop);
        var varieties = names.Values.Where(n => n.Variety is not null).Select(n => n.Variety!.Trim().ToUpperInvariant()).Distinct().ToArray();
        var traits = await db.Set<VarietyRow>()
            .Where(v => varieties.Contains(v.NormalizedName))
            .Select(v => new { v.Species, v.NormalizedName, v.Traits })
            .ToDictionaryAsync(v => (v.Species, v.NormalizedName), v => v.Traits, stop);

        return Of(guide, standing, [.. packets.OrderBy(p => Array.IndexOf(codes, p.Code)).Select(p =>
        {
            var name = names.GetValueOrDefault(p.LotId, GoesBy.NotKnown);
            var known = name is { Variety: { } variety, Species: { } species } ? traits.GetValueOrDefault((species, variety.Trim().ToUpperInvariant()), "") : "";
            return (p.Code, name, known);
        })]);
    }

    private static CaseOrigin Of(CompiledGuide guide, List<OriginClueRow> clues, IReadOnlyList<(string Code, GoesBy Name, string Traits)> packets)
    {
        if (packets.Count == 0) return None;
        var tied = clues.Where(c => c.Tied).Select(c => c.PacketCode).ToHashSet();
        var inPlay = tied.Count > 0 ? packets.Where(p => tied.Contains(p.Code)).ToList() : [.. packets];
        var others = clues.Any(c => c.Kind is OriginKind.Gift or OriginKind.Swap or OriginKind.Bought or OriginKind.SelfSown);
        var lambda = tied.Count > 0 ? TiedPlant : others ? OwnLoansAmongOtherSources : OwnLoans;
        var sown = clues.Where(c => c.PacketCode is not null).ToLookup(c => c.PacketCode, c => c.SeedsSown);
        // Numbers of seeds count only where they are known for all; else each packet weighs the same.
        var allSown = inPlay.TrueForAll(p => sown[p.Code].Any(n => n is not null));
        var possible = inPlay.Select(p => new PossiblePacket(
            p.Code,
            allSown ? sown[p.Code].Max() ?? 1 : 1,
            p.Name.Species is { } species && guide.Guide.FindCandidate(species) is not null ? [new TaxonShare(species, null, NameHolds)] : [],
            OwnTraits(guide.Guide, p.Traits)));
        return new CaseOrigin(
            Prior.OfGuide with { Origin = new Origin(lambda, [.. possible]) },
            [.. packets.Select(p => new CluePacket(p.Code, p.Name.Variety, p.Name.Species, tied.Contains(p.Code)))]);
    }

    /// <summary>The traits of a variety record as the ranking takes them; lines the guide does not know are left out.</summary>
    /// <param name="guide">The guide.</param>
    /// <param name="lines">One "trait=state" a line.</param>
    internal static IReadOnlyList<OwnTrait> OwnTraits(CropGuide guide, string lines) =>
        [.. lines.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(line => line.Split('=', 2, StringSplitOptions.TrimEntries))
            .Where(pair => pair.Length == 2 && guide.FindTrait(pair[0])?.FindState(pair[1]) is not null)
            .GroupBy(pair => pair[0], pair => pair[1])
            .Select(states => new OwnTrait(states.Key, states.Distinct().ToDictionary(s => s, _ => 1.0 / states.Distinct().Count())))];
}
