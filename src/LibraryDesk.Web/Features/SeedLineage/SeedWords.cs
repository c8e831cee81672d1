using System.Globalization;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Web.Features.SeedLineage.SeedLineageText;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Words for what the ledger holds as codes: one wording on every page.</summary>
public static class SeedWords
{
    /// <summary>As in "9 August 2026", in the reader's language.</summary>
    public static string Day(DateOnly day) => Dates.Day(day);

    /// <summary>When it was sown; a day that is only the earliest it can be says so.</summary>
    public static string Sown(DateOnly day, bool orLater) => orLater ? Say[$"sown on {Day(day)} or later"] : Say[$"sown {Day(day)}"];

    /// <summary>For the value of a date input.</summary>
    public static string DayValue(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Percent(double share) => Say[$"{share * 100:0.#} %"];

    /// <summary>An amount, with what it comes to in the other unit where the seed weight is known.</summary>
    public static string Amount(Quantity quantity, long? thousandSeedMilligrams = null)
    {
        var other = quantity.In(quantity.Unit == SeedUnit.Seeds ? SeedUnit.Milligrams : SeedUnit.Seeds, thousandSeedMilligrams);
        if (other is not { Amount: > 0 } known) return Seed(quantity);
        return quantity.Unit == SeedUnit.Seeds ? Say[$"{Seed(quantity)}, about {Seed(known)}"] : Say[$"{Seed(quantity)}, about {known.Amount:N0} seeds"];
    }

    /// <summary>An amount as in "40 seeds" or "12.5 g".</summary>
    public static string Seed(Quantity quantity) => quantity.Unit == SeedUnit.Seeds
        ? Say.Count(quantity.Amount, $"{quantity.Amount} seed", $"{quantity.Amount} seeds")
        : Measures.Grams(quantity.Amount / 1000m);

    public static string Standing(PacketStanding standing) => standing switch
    {
        PacketStanding.OnShelf => Say["on the shelf"],
        PacketStanding.Picked => Say["kept for a request"],
        PacketStanding.Lent => Say["on loan"],
        PacketStanding.Used => Say["sown or used"],
        PacketStanding.Discarded => Say["thrown away"],
        PacketStanding.Transferred => Say["with another library"],
        _ => Say["undone"],
    };

    public static string Reason(HoldReason reason) => reason switch
    {
        HoldReason.IntakeQuarantine => Say["waiting to be looked at"],
        HoldReason.NameInDoubt => Say["name in doubt"],
        HoldReason.Health => Say["a disease or pest is feared"],
        HoldReason.LowStock => Say["too little left to lend"],
        HoldReason.LowGermination => Say["germinates too poorly"],
        HoldReason.Recall => Say["recalled"],
        _ => Say["for a legal reason"],
    };

    public static string Grounds(ClaimGrounds grounds) => grounds switch
    {
        ClaimGrounds.DonorsWord => Say["Donor’s word"],
        ClaimGrounds.LabelOnly => Say["Label only"],
        ClaimGrounds.GrowersWord => Say["Grower’s word"],
        _ => Say["Determined by the desk"],
    };

    public static string Ending(LoanEnding? ending) => ending switch
    {
        null => Say["running"],
        LoanEnding.ReturnedSeed => Say["seed came back"],
        LoanEnding.BroughtBack => Say["brought back unopened"],
        LoanEnding.Failed => Say["the sowing or the plants failed"],
        LoanEnding.Eaten => Say["eaten, no seed kept"],
        _ => Say["nothing came back"],
    };

    /// <summary>What a place in the lineage is called: its code, or of a grow-out how many plants, which the lineage says in English.</summary>
    public static string Place(NodeKind kind, string label) => kind != NodeKind.GrowOut ? label
        : int.TryParse(label.Split(' ')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var plants) ? Say.Count(plants, $"{plants} plant", $"{plants} plants")
        : Say["grown"];

    public static string Made(Lot lot) => lot.Origin switch
    {
        LotOrigin.Intake => Say["came in"],
        LotOrigin.Harvest => Say["harvest handed in"],
        LotOrigin.Split => Say["split off"],
        _ => Say["blended"],
    };

    public static string Isolation(Isolation isolation) => isolation switch
    {
        LibraryDesk.Lineage.Acts.Isolation.Open => Say["nothing done"],
        LibraryDesk.Lineage.Acts.Isolation.Distance => Say["by distance"],
        LibraryDesk.Lineage.Acts.Isolation.Bagged => Say["flowers or branches bagged"],
        LibraryDesk.Lineage.Acts.Isolation.Caged => Say["under a cage or net"],
        LibraryDesk.Lineage.Acts.Isolation.HandPollinated => Say["pollinated by hand, flowers closed"],
        LibraryDesk.Lineage.Acts.Isolation.Time => Say["flowered at another time"],
        _ => Say["not told"],
    };
}
