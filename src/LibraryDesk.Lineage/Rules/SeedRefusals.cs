using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>The refusals of the seed rules: codes are stable, messages say the rule and the way on.</summary>
public static class SeedRefusals
{
    public const string FutureCode = "day.future";
    public const string BeforeParentCode = "day.before-parent";
    public const string NotThereCode = "seed.not-there";
    public const string NothingCode = "seed.nothing";
    public const string TooMuchCode = "seed.too-much";
    public const string MoreThanThereCode = "seed.more-than-there";
    public const string OtherUnitCode = "seed.other-unit";
    public const string SeedWeightCode = "seed.weight-unknown";
    public const string OnHoldCode = "seed.on-hold";
    public const string TextEmptyCode = "text.empty";
    public const string TextLongCode = "text.long";
    public const string PlaceLongCode = "text.place-long";
    public const string TextPersonalCode = "text.personal";

    internal static Refusal Future(DateOnly on) => new(FutureCode, $"{on:d MMMM yyyy} has not come yet. Give the day it happened.");

    internal static Refusal BeforeParent(DateOnly on, DateOnly began) =>
        new(BeforeParentCode, $"{on:d MMMM yyyy} is before {began:d MMMM yyyy}, when the seed it comes from came to be. Check both days.");

    internal static Refusal NoSeed { get; } = new(NotThereCode, "This seed is not in the library, or its entry was undone.");

    internal static Refusal NoLot { get; } = new(NotThereCode, "This lot is not in the library, or its entry was undone.");

    internal static Refusal NoPacket { get; } = new(NotThereCode, "This packet is not in the library, or its entry was undone.");

    internal static Refusal NoGrowOut { get; } = new(NotThereCode, "This grow-out is not in the library, or its entry was undone.");

    internal static Refusal Nothing() => new(NothingCode, "Give an amount above nothing.");

    internal static Refusal MoreThanThere(Quantity asked, Quantity there) =>
        new(MoreThanThereCode, $"{asked.InWords} asked for, but only {there.InWords} there. Take less, or count the stock first.");

    internal static Refusal SeedWeight() =>
        new(SeedWeightCode, "Seeds and grams cannot be turned into each other here, because the seed weight is not known. Weigh 100 seeds and enter it with a stocktake, or give the amount in the other unit.");

    internal static Refusal OnHold(Hold hold) => hold.Reason == Acts.HoldReason.Recall
        ? new(OnHoldCode, $"This seed is called back since {hold.HeldOn:d MMMM yyyy}. Keep it apart, and take other seed.")
        : new(OnHoldCode, $"This seed is held ({Reason(hold)}) since {hold.HeldOn:d MMMM yyyy}. Lift the hold first, or take other seed.");

    private static Sentence Reason(Hold hold) => hold.Reason switch
    {
        Acts.HoldReason.IntakeQuarantine => Sentence.Of($"waiting to be looked at"),
        Acts.HoldReason.NameInDoubt => Sentence.Of($"name in doubt"),
        Acts.HoldReason.Health => Sentence.Of($"health"),
        Acts.HoldReason.LowStock => Sentence.Of($"too little left"),
        Acts.HoldReason.LowGermination => Sentence.Of($"germinates too poorly"),
        _ => Sentence.Of($"for a legal reason"),
    };
}
