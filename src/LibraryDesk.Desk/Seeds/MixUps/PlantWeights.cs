using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Names;

namespace LibraryDesk.Desk.Seeds.MixUps;

/// <summary>A determined plant and how much it says about its name.</summary>
/// <param name="Plant">The plant.</param>
/// <param name="Said">What its packet was said to be before any plant was determined.</param>
/// <param name="Times">How many times likelier what was seen is if the plant is what its packet says than if it is another variety; below 1 speaks against the name.</param>
/// <param name="ByTraits">True when its answers were weighed by the crop guide; false when only the determination itself counts.</param>
/// <param name="IsByBorrower">True when a borrower grew it, whose own label may have been lost.</param>
public sealed record WeighedPlant(DeterminedPlant Plant, GoesBy Said, double Times, bool ByTraits, bool IsByBorrower)
{
    /// <summary>True when it speaks for the name.</summary>
    public bool Fits => Times >= 1;

    /// <summary>True when it was determined as another species than its packet's.</summary>
    public bool IsOtherSpecies => Said.Species is { } species && species != Plant.Taxon;

    /// <summary>The plant as the finder takes it.</summary>
    internal TestedPlant Tested
    {
        get
        {
            var ifName = Times / (1 + Times);
            // A cross shows its mother's species, so another species says no more for a cross than for the name being right.
            var crossed = IsOtherSpecies ? new Dictionary<CauseKind, double> { [CauseKind.CrossedAtGrowOut] = ifName } : null;
            return new(Plant.PacketCode, Plant.Packet, ifName, 1 - ifName, crossed, IsByBorrower);
        }
    }
}

/// <summary>
/// Weighs determined plants by their own crop guide: P(answers | the name) against P(answers | any plant of the crop). A determination can
/// itself be wrong, and another variety can look alike, so no single plant weighs more than the table of rates lets it.
/// </summary>
internal sealed class PlantWeights(GuideShelf shelf, RateTable rates)
{
    /// <summary>The most that one plant speaks for its name.</summary>
    public double MostFor => (1 - rates[RateTable.TestSlip].Value) / rates[RateTable.FitsAnyway].Value;

    /// <summary>The most that one plant speaks against its name, as the same ratio: below 1.</summary>
    public double MostAgainst => rates[RateTable.TestSlip].Value / (1 - rates[RateTable.FitsAnyway].Value);

    public async Task<IReadOnlyList<WeighedPlant>> OfAsync(LibraryDbContext db, FamilySlice family, CancellationToken stop)
    {
        var names = family.SaidNames();
        var ids = family.Plants.Select(plant => plant.CaseId).Distinct().ToArray();
        var cases = await db.Set<CaseRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).ToDictionaryAsync(row => row.Id, stop);
        var answers = (await db.Set<AnswerRow>().AsNoTracking().Where(row => ids.Contains(row.CaseId) && row.TakenBackAt == null).ToListAsync(stop)).ToLookup(row => row.CaseId);
        var traits = await TraitsAsync(db, [.. names.Values.Select(name => name.Variety).OfType<string>()], stop);
        var holders = family.State.Packets.Where(packet => packet.Holder is not null).Select(packet => packet.Id.Node).ToHashSet();
        var weighed = new List<WeighedPlant>();
        foreach (var plant in family.Plants)
        {
            var said = names.GetValueOrDefault(plant.Lot.Value, GoesBy.NotKnown);
            var row = cases[plant.CaseId];
            var guide = await shelf.GetAsync(row.GuideId, row.GuideVersion, stop);
            var own = said is { Variety: { } variety, Species: { } species } ? traits.GetValueOrDefault((species, variety.Trim().ToUpperInvariant()), "") : "";
            weighed.Add(Weigh(plant, said, ByTraits(guide, [.. answers[plant.CaseId]], said, own), holders.Contains(plant.Packet)));
        }

        return weighed;
    }

    private WeighedPlant Weigh(DeterminedPlant plant, GoesBy said, double? byTraits, bool isByBorrower)
    {
        var agrees = said.Species is null || said.Species == plant.Taxon;

        // Two people who saw the photos outweigh a ratio that points the other way; then the determination counts by its own rates.
        var isUsable = byTraits is { } times && (agrees ? plant.Variety is null || times >= 1 : times < 1);
        var weight = isUsable ? Math.Clamp(byTraits!.Value, MostAgainst, MostFor) : agrees ? MostFor : MostAgainst;
        return new(plant, said, weight, isUsable, isByBorrower);
    }

    private static double? ByTraits(CompiledGuide guide, IReadOnlyList<AnswerRow> answers, GoesBy said, string own)
    {
        if (said.Species is not { } species || guide.Guide.FindCandidate(species) is null) return null;
        var evidence = CaseEvidence.Of(guide, answers);
        if (evidence.Answers.Count == 0) return null;
        var packet = new PossiblePacket("name", 1, [new TaxonShare(species, null, 1)], CaseOrigin.OwnTraits(guide.Guide, own));
        return Math.Pow(10, Ranker.Rank(guide, evidence, Prior.OfGuide with { Origin = new Origin(0.5, [packet]) }).Packets[0].TraitDecibans / 10);
    }

    private static async Task<Dictionary<(string, string), string>> TraitsAsync(LibraryDbContext db, IReadOnlyList<string> varieties, CancellationToken stop)
    {
        var names = varieties.Select(name => name.Trim().ToUpperInvariant()).Distinct().ToArray();
        return await db.Set<VarietyRow>().Where(row => names.Contains(row.NormalizedName)).Select(row => new { row.Species, row.NormalizedName, row.Traits })
            .ToDictionaryAsync(row => (row.Species, row.NormalizedName), row => row.Traits, stop);
    }
}
