using System.Globalization;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Words for what the ledger holds as codes: one wording on every page.</summary>
public static class SeedWords
{
    /// <summary>As in "9 August 2026".</summary>
    public static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>For the value of a date input.</summary>
    public static string DayValue(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.#} %");

    /// <summary>An amount, with what it comes to in the other unit where the seed weight is known.</summary>
    public static string Amount(Quantity quantity, long? thousandSeedMilligrams = null)
    {
        var other = quantity.In(quantity.Unit == SeedUnit.Seeds ? SeedUnit.Milligrams : SeedUnit.Seeds, thousandSeedMilligrams);
        if (other is not { Amount: > 0 } known) return quantity.ToString();
        return quantity.Unit == SeedUnit.Seeds ? $"{quantity}, about {known}" : string.Create(CultureInfo.InvariantCulture, $"{quantity}, about {known.Amount:N0} seeds");
    }

    public static string Standing(PacketStanding standing) => standing switch
    {
        PacketStanding.OnShelf => "on the shelf",
        PacketStanding.Picked => "kept for a request",
        PacketStanding.Lent => "on loan",
        PacketStanding.Used => "sown or used",
        PacketStanding.Discarded => "thrown away",
        PacketStanding.Transferred => "with another library",
        _ => "undone",
    };

    public static string Reason(HoldReason reason) => reason switch
    {
        HoldReason.IntakeQuarantine => "waiting to be looked at",
        HoldReason.NameInDoubt => "name in doubt",
        HoldReason.Health => "a disease or pest is feared",
        HoldReason.LowStock => "too little left to lend",
        HoldReason.LowGermination => "germinates too poorly",
        HoldReason.Recall => "recalled",
        _ => "for a legal reason",
    };

    public static string Grounds(ClaimGrounds grounds) => grounds switch
    {
        ClaimGrounds.DonorsWord => "Donor’s word",
        ClaimGrounds.LabelOnly => "Label only",
        ClaimGrounds.GrowersWord => "Grower’s word",
        _ => "Determined by the desk",
    };

    public static string Ending(LoanEnding? ending) => ending switch
    {
        null => "running",
        LoanEnding.ReturnedSeed => "seed came back",
        LoanEnding.BroughtBack => "brought back unopened",
        LoanEnding.Failed => "the sowing or the plants failed",
        LoanEnding.Eaten => "eaten, no seed kept",
        _ => "nothing came back",
    };

    public static string Made(Lot lot) => lot.Origin switch
    {
        LotOrigin.Intake => "came in",
        LotOrigin.Harvest => "harvest handed in",
        LotOrigin.Split => "split off",
        _ => "blended",
    };

    public static string Isolation(Isolation isolation) => isolation switch
    {
        LibraryDesk.Lineage.Acts.Isolation.Open => "nothing done",
        LibraryDesk.Lineage.Acts.Isolation.Distance => "by distance",
        LibraryDesk.Lineage.Acts.Isolation.Bagged => "flowers or branches bagged",
        LibraryDesk.Lineage.Acts.Isolation.Caged => "under a cage or net",
        LibraryDesk.Lineage.Acts.Isolation.HandPollinated => "pollinated by hand, flowers closed",
        LibraryDesk.Lineage.Acts.Isolation.Time => "flowered at another time",
        _ => "not told",
    };
}
