using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides about counting, moving, discarding, sending on and testing seed.</summary>
public static class StockRules
{
    public const string OtherUnitCode = "stock.other-unit";
    public const string SamePlaceCode = "stock.same-place";
    public const string WithBorrowerCode = "stock.with-borrower";
    public const string ReplicateCode = "stock.replicate";
    public const string DaysCode = "stock.test-days";
    public const string TestedSoCode = "stock.tested-so";
    public const string FarOffCode = "stock.far-off";

    /// <summary>The most replicates of one germination test.</summary>
    public const int MostReplicates = 50;

    // No source: far above the longest test that is prescribed.
    private const int MostDays = 1000;

    // No source: so far below, a slip of the key or the other unit is likelier than a leak.
    private const int TimesFarBelow = 10;

    /// <summary>A stocktake. What was found replaces what the ledger expected, with a reason when they differ.</summary>
    /// <param name="stock">What is counted.</param>
    /// <param name="found">What was there, in either unit.</param>
    /// <param name="thousandSeedMilligrams">Seed weight where it was measured; null to keep what is known.</param>
    /// <param name="countedOn">The day.</param>
    /// <param name="reason">Why it differs; may be empty when it does not.</param>
    /// <param name="today">Today.</param>
    /// <param name="isSure">True when a count far off what is expected is said to be meant.</param>
    public static Outcome<Counted> Count(SeedStock stock, Quantity found, long? thousandSeedMilligrams, DateOnly countedOn, string? reason, DateOnly today, bool isSure = false)
    {
        ArgumentNullException.ThrowIfNull(stock);
        if (stock.IsVoid || stock.Stock is not { } expected) return SeedRefusals.NoSeed;
        if (Checks.Days(countedOn, today, stock.Began) is { } wrongDay) return wrongDay;
        if (Checks.SeedWeight(thousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (Checks.Incoming(found) is { } tooMuch) return tooMuch;
        if (found.In(expected.Unit, thousandSeedMilligrams ?? stock.ThousandSeedMilligrams) is not { } counted) return SeedRefusals.SeedWeight();
        if ((counted != expected || !string.IsNullOrWhiteSpace(reason)) && Checks.Text(reason, "Say why the count differs in a few words.") is { } noReason) return noReason;
        if (!isSure && (counted.Amount > 2 * expected.Amount || (!counted.IsEmpty && counted.Amount * TimesFarBelow <= expected.Amount)))
            return new Refusal(FarOffCode, $"The ledger expects {expected.InWords}, and {counted.InWords} is far off that. Check the figure and its unit.") { MayInsist = true };
        return new Counted(stock.Node, expected, counted, thousandSeedMilligrams, countedOn, string.IsNullOrWhiteSpace(reason) ? "as expected" : reason.Trim());
    }

    /// <summary>Throws seed away.</summary>
    public static Outcome<Discarded> Discard(SeedStock stock, Quantity seed, DateOnly discardedOn, string? reason, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(stock);
        if (Checks.Days(discardedOn, today, stock.Began) is { } wrongDay) return wrongDay;
        if (Checks.Text(reason, "Say why it is thrown away in a few words.") is { } noReason) return noReason;
        return Checks.Take(stock, seed).Then<Discarded>(taken => new Discarded(stock.Node, taken, discardedOn, reason!.Trim()));
    }

    /// <summary>Throws a whole packet away.</summary>
    public static Outcome<Discarded> Discard(Packet packet, DateOnly discardedOn, string? reason, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(packet);
        return Away(packet) is { } no ? no : Discard(SeedStock.Of(packet), packet.Stock, discardedOn, reason, today);
    }

    /// <summary>Sends seed of a lot on to another library.</summary>
    public static Outcome<TransferredOut> SendOn(SeedStock stock, IReadOnlyList<Hold> holdsAbove, Quantity seed, string? library, DateOnly sentOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(stock);
        if (Checks.Days(sentOn, today, stock.Began) is { } wrongDay) return wrongDay;
        if (Checks.Standing(holdsAbove) is { } hold) return SeedRefusals.OnHold(hold);
        if (Checks.Text(library, "Say which library it goes to in a few words.", SeedTextLengths.Name) is { } noLibrary) return noLibrary;
        return Checks.Take(stock, seed).Then<TransferredOut>(taken => new TransferredOut(stock.Node, taken, library!.Trim(), sentOn));
    }

    /// <summary>Sends a whole packet on to another library.</summary>
    public static Outcome<TransferredOut> SendOn(Packet packet, IReadOnlyList<Hold> holdsAbove, string? library, DateOnly sentOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(packet);
        return Away(packet) is { } no ? no : SendOn(SeedStock.Of(packet), holdsAbove, packet.Stock, library, sentOn, today);
    }

    /// <summary>Moves a lot or a packet.</summary>
    /// <param name="node">The lot or packet.</param>
    /// <param name="began">The day it came to be.</param>
    /// <param name="from">Where it is; null when not said.</param>
    /// <param name="to">Where it goes.</param>
    /// <param name="movedOn">The day.</param>
    /// <param name="today">Today.</param>
    /// <param name="isVoid">True for a node whose entry was undone: there is nothing to move.</param>
    public static Outcome<Moved> Move(NodeId node, DateOnly began, string? from, string? to, DateOnly movedOn, DateOnly today, bool isVoid = false)
    {
        if (isVoid) return SeedRefusals.NoSeed;
        if (Checks.Days(movedOn, today, began) is { } wrongDay) return wrongDay;
        if (Checks.Place(to) is { } wrongPlace) return wrongPlace;
        if (string.IsNullOrWhiteSpace(to)) return new Refusal(SeedRefusals.TextEmptyCode, "Say where it goes in a few words.");
        if (to.Trim() == from) return new Refusal(SamePlaceCode, $"It is in {from} already.");
        return new Moved(node, from, to.Trim(), movedOn);
    }

    /// <summary>Takes down a germination test, and takes its seeds out of the lot unless they were set aside before.</summary>
    /// <param name="test">Its number.</param>
    /// <param name="lot">The lot.</param>
    /// <param name="before">Tests of the lot on record.</param>
    /// <param name="replicates">Sown and germinated.</param>
    /// <param name="readOn">The day of the last count.</param>
    /// <param name="days">Days from sowing; null when not told.</param>
    /// <param name="takeFromLot">True when the seeds leave the lot now.</param>
    /// <param name="today">Today.</param>
    /// <param name="isSure">True when a second test of the same counts, or one that began before the lot was here, is said to be meant.</param>
    public static Outcome<GerminationTested> Test(
        TestId test, Lot lot, IReadOnlyList<GerminationTest> before, IReadOnlyList<TestReplicate> replicates, DateOnly readOn, int? days, bool takeFromLot, DateOnly today, bool isSure = false)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(replicates);
        if (lot.IsVoid) return SeedRefusals.NoLot;
        if (replicates.Count > MostReplicates) return new Refusal(ReplicateCode, $"Put the seeds together into at most {MostReplicates} replicates.");
        if (replicates.Count == 0 || replicates.Any(replicate => replicate.Sown is < 1 or > 100_000)) return new Refusal(ReplicateCode, "Say how many seeds were sown: at least one.");
        if (replicates.Any(replicate => replicate.Germinated < 0 || replicate.Germinated > replicate.Sown)) return new Refusal(ReplicateCode, "No more seeds can come up than were sown. Check both counts.");
        if (days is < 1 or > MostDays) return new Refusal(DaysCode, $"A test lasts from 1 to {MostDays} days. Leave the days empty when they are not known.");
        if (Checks.Days(readOn, today, lot.MadeOn) is { } wrongDay) return wrongDay;
        if (!isSure && Doubt(lot, before, replicates, readOn, days) is { } doubt) return doubt;
        if (!takeFromLot) return new GerminationTested(test, lot.Id, readOn, replicates, days, new Quantity(0, lot.Stock.Unit));
        return Checks.Take(SeedStock.Of(lot), Quantity.OfSeeds(replicates.Sum(replicate => (long)replicate.Sown)))
            .Then<GerminationTested>(used => new GerminationTested(test, lot.Id, readOn, replicates, days, used));
    }

    private static Refusal? Doubt(Lot lot, IReadOnlyList<GerminationTest> before, IReadOnlyList<TestReplicate> replicates, DateOnly readOn, int? days)
    {
        if (before.Any(known => !known.IsVoid && known.ReadOn == readOn && known.Replicates.SequenceEqual(replicates)))
            return new(TestedSoCode, "A test of that day with these counts is on record already. If it is another one, say so; otherwise nothing is left to do.") { MayInsist = true };
        return days is { } lasted && readOn.AddDays(-lasted) < lot.MadeOn
            ? new(DaysCode, $"A test of {lasted} days began before this lot was made. Check the days and the day of the count.") { MayInsist = true }
            : null;
    }

    private static Refusal? Away(Packet packet) => packet.Standing switch
    {
        PacketStanding.OnShelf => null,
        PacketStanding.Void => SeedRefusals.NoPacket,
        PacketStanding.Lent => new(WithBorrowerCode, $"Packet {packet.Code} is with a borrower. End the loan first."),
        PacketStanding.Picked => new(WithBorrowerCode, $"Packet {packet.Code} is kept for a request. Answer or undo the request first."),
        _ => new(LendingRules.GoneCode, $"Packet {packet.Code} is gone already."),
    };
}
