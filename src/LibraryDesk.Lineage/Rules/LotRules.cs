using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>What somebody wants to take from one source for a new lot.</summary>
/// <param name="Source">The source as it stands.</param>
/// <param name="Species">Its species; null when not known. For a harvest, the species of the lot it was sown from.</param>
/// <param name="Asked">How much, in either unit; null for all that is there.</param>
/// <param name="HoldsAbove">Holds on it and on everything upstream of it.</param>
public sealed record LotTaking(SeedStock Source, string? Species, Quantity? Asked, IReadOnlyList<Hold> HoldsAbove);

/// <summary>What is to be said of a new lot.</summary>
/// <param name="Lot">Its number.</param>
/// <param name="Code">Its code.</param>
/// <param name="MadeOn">The day.</param>
/// <param name="ThousandSeedMilligrams">Its own seed weight where it was measured; null to take over the source's.</param>
/// <param name="Place">Where it is kept; null when not said.</param>
public sealed record NewLot(LotId Lot, LotCode Code, DateOnly MadeOn, long? ThousandSeedMilligrams, string? Place);

/// <summary>Decides how lots are made. Seed is conserved: a new lot is what its sources gave.</summary>
public static class LotRules
{
    public const string BlendNeedsTwoCode = "lot.blend-needs-two";
    public const string OtherSpeciesCode = "lot.other-species";
    public const string SpeciesUnknownCode = "lot.species-unknown";
    public const string TwiceCode = "lot.source-twice";

    /// <summary>Makes a lot of an accession, or of part of it. A quarantine hold goes along, since it stands upstream.</summary>
    public static Outcome<LotMade> FromAccession(NewLot wanted, LotTaking taking, DateOnly today) => FromOne(wanted, taking, LotOrigin.Intake, today);

    /// <summary>Makes a lot of what came back of a grow-out.</summary>
    public static Outcome<LotMade> FromHarvest(NewLot wanted, LotTaking taking, DateOnly today) => FromOne(wanted, taking, LotOrigin.Harvest, today);

    /// <summary>Splits part of a lot off. The rest stays under the old code.</summary>
    public static Outcome<LotMade> Split(NewLot wanted, LotTaking taking, DateOnly today) => FromOne(wanted, taking, LotOrigin.Split, today);

    /// <summary>Blends lots of one species. Held seed is not blended: it would carry its doubt into sound seed.</summary>
    public static Outcome<LotMade> Blend(NewLot wanted, IReadOnlyList<LotTaking> takings, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(takings);
        if (takings.Count < 2) return new Refusal(BlendNeedsTwoCode, "A blend needs two lots or more. To take part of one lot, split it.");
        if (takings.DistinctBy(taking => taking.Source.Node).Count() < takings.Count) return new Refusal(TwiceCode, "The same lot stands twice in this blend. Give its whole amount once.");
        if (takings.Any(taking => taking.Species is null)) return new Refusal(SpeciesUnknownCode, "Seed of unknown species is not blended. Have the species determined first.");
        if (takings.DistinctBy(taking => taking.Species, StringComparer.Ordinal).Count() > 1) return new Refusal(OtherSpeciesCode, "These lots are of different species. Only seed of one species is blended.");
        foreach (var taking in takings)
        {
            if (Checks.Standing(taking.HoldsAbove) is { } hold) return OfPart(takings, taking, SeedRefusals.OnHold(hold));
        }

        return Make(wanted, takings, LotOrigin.Blend, today);
    }

    /// <summary>A refusal of one part of a blend, so that it is known which.</summary>
    /// <param name="part">Its place, from 1.</param>
    /// <param name="no">What is wrong with it.</param>
    public static Refusal OfPart(int part, Refusal no)
    {
        ArgumentNullException.ThrowIfNull(no);
        return new(no.Code, $"Part {part}: {no.Words}");
    }

    /// <summary>The part, from 1, that a refusal is about; null for one about the whole.</summary>
    public static int? PartOf(Refusal no) => no is { Sentence: { Pattern: "Part {0}: {1}", Values: [int part, ..] } } ? part : null;

    private static Refusal OfPart(IReadOnlyList<LotTaking> takings, LotTaking taking, Refusal no) =>
        takings.Count == 1 ? no : OfPart(takings.TakeWhile(other => other != taking).Count() + 1, no);

    private static Outcome<LotMade> FromOne(NewLot wanted, LotTaking taking, LotOrigin origin, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(taking);
        return Make(wanted, [taking], origin, today);
    }

    private static Outcome<LotMade> Make(NewLot wanted, IReadOnlyList<LotTaking> takings, LotOrigin origin, DateOnly today)
    {
        if (Checks.Days(wanted.MadeOn, today, takings.Select(taking => taking.Source.Began)) is { } wrongDay) return wrongDay;
        if (Checks.SeedWeight(wanted.ThousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (Checks.Place(wanted.Place) is { } wrongPlace) return wrongPlace;
        var taken = new List<(SeedStock Source, Quantity Seed)>();
        foreach (var taking in takings)
        {
            if (taking.Source.Stock is not { } stock) return SeedRefusals.NoSeed;
            if (!Checks.Take(taking.Source, taking.Asked ?? stock).TryGet(out var seed, out var no)) return OfPart(takings, taking, no);
            taken.Add((taking.Source, seed));
        }

        // Milligrams only when all sources are weighed: counts are exact, and a mixed lot is better counted.
        var unit = taken.All(part => part.Seed.Unit == SeedUnit.Milligrams) ? SeedUnit.Milligrams : SeedUnit.Seeds;
        var canCount = taken.All(part => part.Seed.In(SeedUnit.Seeds, part.Source.ThousandSeedMilligrams) is not null);
        var sources = new List<LotSource>();
        foreach (var (source, seed) in taken)
        {
            if (seed.In(unit, source.ThousandSeedMilligrams) is not { } given) return SeedRefusals.SeedWeight();
            var count = canCount ? seed.In(SeedUnit.Seeds, source.ThousandSeedMilligrams)!.Value.Amount : seed.Amount;
            sources.Add(new LotSource(source.Node, seed, given, count));
        }

        return new LotMade(wanted.Lot, wanted.Code, origin, sources, takings[0].Species, wanted.MadeOn, unit, wanted.ThousandSeedMilligrams ?? Weight(taken), wanted.Place?.Trim());
    }

    // The seed weight of a blend is the mean over its seeds; unknown as soon as one part's is.
    private static long? Weight(List<(SeedStock Source, Quantity Seed)> taken)
    {
        if (taken.Count == 1) return taken[0].Source.ThousandSeedMilligrams;
        var weight = 0m;
        var seeds = 0m;
        foreach (var (source, seed) in taken)
        {
            if (source.ThousandSeedMilligrams is not { } thousand || seed.In(SeedUnit.Seeds, thousand) is not { } count) return null;
            weight += count.Amount * (decimal)thousand;
            seeds += count.Amount;
        }

        return seeds > 0 ? (long)decimal.Round(weight / seeds) : null;
    }
}
