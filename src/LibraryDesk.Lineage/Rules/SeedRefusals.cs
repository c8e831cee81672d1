using System.Globalization;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>The refusals of the seed rules: codes are stable, messages say the rule and the way on.</summary>
public static class SeedRefusals
{
    public const string FutureCode = "day.future";
    public const string BeforeParentCode = "day.before-parent";
    public const string NotThereCode = "seed.not-there";
    public const string NothingCode = "seed.nothing";
    public const string MoreThanThereCode = "seed.more-than-there";
    public const string OtherUnitCode = "seed.other-unit";
    public const string SeedWeightCode = "seed.weight-unknown";
    public const string OnHoldCode = "seed.on-hold";
    public const string TextEmptyCode = "text.empty";
    public const string TextLongCode = "text.long";
    public const string TextPersonalCode = "text.personal";

    internal static Refusal Future(DateOnly on) => new(FutureCode, $"{Day(on)} has not come yet. Give the day it happened.");

    internal static Refusal BeforeParent(DateOnly on, DateOnly began) =>
        new(BeforeParentCode, $"{Day(on)} is before {Day(began)}, when the seed it comes from came to be. Check both days.");

    internal static Refusal NotThere(string what) => new(NotThereCode, $"This {what} is not in the library, or its entry was undone.");

    internal static Refusal Nothing() => new(NothingCode, "Give an amount above nothing.");

    internal static Refusal MoreThanThere(Quantity asked, Quantity there) =>
        new(MoreThanThereCode, $"{asked} asked for, but only {there} there. Take less, or count the stock first.");

    internal static Refusal SeedWeight() =>
        new(SeedWeightCode, "Seeds and grams cannot be turned into each other here, because the seed weight is not known. Weigh 100 seeds and enter it with a stocktake, or give the amount in the other unit.");

    internal static Refusal OnHold(Hold hold) =>
        new(OnHoldCode, $"This seed is held ({Reason(hold)}) since {Day(hold.HeldOn)}. Lift the hold first, or take other seed.");

    internal static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Reason(Hold hold) => hold.Reason switch
    {
        Acts.HoldReason.IntakeQuarantine => "waiting to be looked at",
        Acts.HoldReason.NameInDoubt => "name in doubt",
        Acts.HoldReason.Health => "health",
        Acts.HoldReason.LowStock => "too little left",
        Acts.HoldReason.LowGermination => "germinates too poorly",
        Acts.HoldReason.Recall => "recalled",
        _ => "for a legal reason",
    };
}
