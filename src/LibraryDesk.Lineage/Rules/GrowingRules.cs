using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides what is taken down about growing for seed, and what comes back.</summary>
public static class GrowingRules
{
    public const string PlantsCode = "growing.plants";
    public const string LoanCode = "growing.other-loan";
    public const string SownAlreadyCode = "growing.sown-already";
    public const string HarvestDayCode = "growing.harvest-day";
    public const string UnitCode = "growing.harvest-unit";
    public const string FiguresCode = "growing.figures";
    public const string YieldCode = "growing.yield";

    // No source: far above what a member grows, and further than any published isolation distance.
    private const int MostPlants = 1_000_000;
    private const int MostMetres = 1_000_000;

    // No source: more than a plant of any crop a library keeps gives, by weight and by number.
    private const long MostMilligramsAPlant = 1_000_000;
    private const long MostSeedsAPlant = 1_000_000;

    /// <summary>Takes down that a packet was sown for seed. A packet counts as sown whole.</summary>
    /// <param name="growOut">The new grow-out's number.</param>
    /// <param name="packet">The packet as it stands.</param>
    /// <param name="loan">The open loan it grew from; null when the library grew it itself, or a packet turns up that nobody signed out.</param>
    /// <param name="grower">Who grew it; null when not known.</param>
    /// <param name="sownOn">The day.</param>
    /// <param name="facts">What the grower told.</param>
    /// <param name="today">Today.</param>
    public static Outcome<GrownOut> SowPacket(GrowOutId growOut, Packet packet, Loan? loan, PersonId? grower, DateOnly sownOn, GrowOutFacts facts, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(packet);
        if (packet.Standing is PacketStanding.Void) return SeedRefusals.NoPacket;
        if (packet.Stock.IsEmpty) return new Refusal(SownAlreadyCode, $"Packet {packet.Code} was sown or used before. If it was not, correct that entry first.");
        if (loan is not null && (loan.Packet != packet.Id || !loan.IsOpen)) return new Refusal(LoanCode, "That loan is not the open loan of this packet. Scan the packet again.");
        if (loan is null && packet.Standing == PacketStanding.Lent) return new Refusal(LoanCode, $"Packet {packet.Code} is out on loan. Take the growing down with that loan.");
        if (Checks.Days(sownOn, today, loan?.LentOn ?? packet.PackedOn) is { } wrongDay) return wrongDay;
        if (Facts(facts, sownOn, today) is { } no) return no;
        return new GrownOut(growOut, packet.Id.Node, loan?.Id, grower, sownOn, packet.Stock, facts);
    }

    /// <summary>Takes down that the library sowed part of a lot itself. Held seed may be sown: that is how a doubt is settled.</summary>
    public static Outcome<GrownOut> SowLot(GrowOutId growOut, Lot lot, Quantity sown, PersonId? grower, DateOnly sownOn, GrowOutFacts facts, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(lot);
        if (Checks.Days(sownOn, today, lot.MadeOn) is { } wrongDay) return wrongDay;
        if (Facts(facts, sownOn, today) is { } no) return no;
        return Checks.Take(SeedStock.Of(lot), sown).Then<GrownOut>(taken => new GrownOut(growOut, lot.Id.Node, null, grower, sownOn, taken, facts));
    }

    /// <summary>Takes seed of a grow-out back, with or without a loan. A second return of one grow-out is in the unit of the first.</summary>
    /// <param name="growOut">The growing.</param>
    /// <param name="loan">The loan it grew from; null without one.</param>
    /// <param name="by">Who brings it; null when not known.</param>
    /// <param name="returnedOn">The day.</param>
    /// <param name="seed">How much.</param>
    /// <param name="thousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
    /// <param name="today">Today.</param>
    /// <param name="isSure">True when more seed than the plants can be thought to give is said to be meant.</param>
    public static Outcome<Returned> Return(
        GrowOut growOut, Loan? loan, PersonId? by, DateOnly returnedOn, Quantity seed, long? thousandSeedMilligrams, DateOnly today, bool isSure = false)
    {
        ArgumentNullException.ThrowIfNull(growOut);
        if (growOut.IsVoid) return SeedRefusals.NoGrowOut;
        if (loan is not null && growOut.Loan != loan.Id) return new Refusal(LoanCode, "That loan is not the one this seed was grown from. Scan the loan again.");
        if (Checks.Days(returnedOn, today, growOut.SownOn) is { } wrongDay) return wrongDay;
        if (seed.IsEmpty) return SeedRefusals.Nothing();
        if (Checks.Incoming(seed) is { } tooMuch) return tooMuch;
        if (Checks.SeedWeight(thousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (!isSure && Yield(growOut.Facts, seed) is { } unlikely) return unlikely;
        if (growOut.Harvest is { } before && before.Unit != seed.Unit)
        {
            if (seed.In(before.Unit, thousandSeedMilligrams ?? growOut.ThousandSeedMilligrams) is not { } turned) return SeedRefusals.SeedWeight();
            seed = turned;
        }

        return new Returned(growOut.Id, loan?.IsOpen == true ? loan.Id : null, by, returnedOn, seed, thousandSeedMilligrams);
    }

    private static Refusal? Yield(GrowOutFacts facts, Quantity seed)
    {
        if ((facts.PlantsSavedFrom ?? facts.PlantsGrown) is not { } plants) return null;
        var most = (seed.Unit == SeedUnit.Milligrams ? MostMilligramsAPlant : MostSeedsAPlant) * plants;
        return seed.Amount <= most ? null : new(YieldCode, $"{seed.InWords} of {plants} plants is more than plants give. Check the figure, its unit and the plants.") { MayInsist = true };
    }

    /// <summary>What is wrong with the facts by themselves; null when nothing is.</summary>
    /// <param name="facts">What the grower told.</param>
    /// <param name="sownOn">The day of sowing.</param>
    /// <param name="today">Today.</param>
    public static Refusal? Facts(GrowOutFacts facts, DateOnly sownOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.HarvestedOn is { } harvestedOn && (harvestedOn < sownOn || harvestedOn > today)) return new(HarvestDayCode, "The harvest cannot be before the sowing or in days to come. Check both days.");
        if (facts.PlantsGrown < 0 || facts.PlantsSavedFrom < 0 || facts.OffTypesSeen < 0 || facts.OffTypesRemoved < 0 || facts.NearestMetres < 0)
        {
            return new(PlantsCode, "Counts and distances are never below nothing. Leave a field empty when it is not known.");
        }

        if (Math.Max(facts.PlantsGrown ?? 0, facts.PlantsSavedFrom ?? 0) > MostPlants || facts.NearestMetres > MostMetres)
        {
            return new(FiguresCode, "More than 1,000,000 plants, or 1,000 km to the next planting, looks like a slip. Check the figures.");
        }

        if (facts.PlantsSavedFrom > facts.PlantsGrown) return new(PlantsCode, "Seed was saved from more plants than were grown. Check both counts.");
        if (facts.OffTypesSeen > facts.PlantsGrown) return new(PlantsCode, "More off-types than plants grown. Check both counts.");
        if (facts.OffTypesRemoved > facts.OffTypesSeen) return new(PlantsCode, "More off-types taken out than seen. Check both counts.");
        if (facts.OffTypesRemoved + facts.PlantsSavedFrom > facts.PlantsGrown) return new(PlantsCode, "Plants that were pulled out gave no seed: those saved from and those pulled out are more than were grown. Check the counts.");
        return null;
    }
}
