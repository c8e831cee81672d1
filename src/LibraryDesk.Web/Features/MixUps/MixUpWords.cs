using LibraryDesk.Desk.Seeds.MixUps;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Web.Features.SeedLineage;
using LibraryDesk.Web.Shared.Odds;
using static LibraryDesk.Web.Features.MixUps.MixUpsText;

namespace LibraryDesk.Web.Features.MixUps;

/// <summary>Words for causes. A mix-up is an event and nobody's fault: no person stands in any of them.</summary>
internal static class MixUpWords
{
    /// <summary>A cause as a heading.</summary>
    public static string Title(PlacedCause placed) => placed.Cause.Kind switch
    {
        CauseKind.ArrivedWrong => Say[$"{Place(placed)} came in under a wrong name"],
        CauseKind.ArrivedMixed => Say[$"{Place(placed)} came in mixed, or as seed of a hybrid"],
        CauseKind.SwappedAtPacking => Say[$"Labels were swapped when packets of {Place(placed)} were put up"],
        CauseKind.SwappedAtGrowOut => Say[$"Other plants stood in for the right ones at a grow-out ({Place(placed)})"],
        CauseKind.CrossedAtGrowOut => Say[$"A grow-out crossed with another variety ({Place(placed)})"],
        _ => Say[$"The label of {Place(placed)} was lost or moved after it was lent"],
    };

    private static string Place(PlacedCause placed) => SeedWords.Place(placed.Place.Kind, placed.Place.Label);

    /// <summary>When it would have happened, and how the seed came.</summary>
    public static string When(PlacedCause placed) => placed.Cause.Kind switch
    {
        CauseKind.ArrivedWrong or CauseKind.ArrivedMixed => placed.Source switch
        {
            SeedSource.SwapTable => Say[$"It came in on {SeedWords.Day(placed.On)} from a swap table, with a label and nobody behind it."],
            SeedSource.Donor => Say[$"It came in on {SeedWords.Day(placed.On)} from a donor."],
            SeedSource.Trade => Say[$"It came in on {SeedWords.Day(placed.On)} from the trade."],
            SeedSource.Library => Say[$"It came in on {SeedWords.Day(placed.On)} from another library."],
            _ => Say[$"It came in on {SeedWords.Day(placed.On)}, and nobody knows from where."],
        },
        CauseKind.SwappedAtPacking => Say[$"They were put up on {SeedWords.Day(placed.On)}."],
        CauseKind.SwappedAtGrowOut or CauseKind.CrossedAtGrowOut => Say[$"It was {SeedWords.Sown(placed.On, placed.OrLater)}."],
        _ => Say[$"The packet was put up on {SeedWords.Day(placed.On)}."],
    };

    /// <summary>An explanation in one line.</summary>
    public static string Title(WholeExplanation one) => one.Causes switch
    {
        [] => Say["Nothing went wrong on the way"],
        [var cause] => Say[$"{Title(cause)}, and nothing else"],
        [var first, var second, ..] => Say[$"{Title(first)}, and: {Title(second)}"],
    };

    /// <summary>The odds as something that can be pictured.</summary>
    public static string Frequency(RankedCause one) => one.Odds switch
    {
        { IsMoreThanNineteen: true } => Say["Of 20 histories that show plants like these, it happened in nearly all."],
        { IsUnderOne: true } => Say["Of 20 histories that show plants like these, it happened in less than one."],
        { Seeds: var seeds } => Say[$"Of 20 histories that show plants like these, it happened in about {seeds}."],
    };

    /// <summary>What a cause takes in.</summary>
    public static string TakesIn(CauseScope scope) => scope switch
    {
        { Codes.Count: 0 } => Say["No seed of it came back to the library, so there is nothing to call back. Ask whoever had it what became of the plants, and note it with the case."],
        { Packets: 0 } => Say["No packet was made downstream of it."],
        _ => Say[$"It takes in {Say.Count(scope.Packets, $"{scope.Packets} packet", $"{scope.Packets} packets")} and {Say.Count(scope.Holders, $"{scope.Holders} person who has or had one", $"{scope.Holders} people who have or had one")}."],
    };

    /// <summary>What a plant says, as a ratio.</summary>
    public static string Weight(WeighedPlant plant) => plant.Fits
        ? Say[$"{plant.Times:0.#} times likelier if the name is right"]
        : Say[$"{1 / plant.Times:0.#} times likelier if it is another variety"];

    /// <summary>Strokes for a weight in decibans: from 3 (twice as likely), 7 (five times) and 13 (twenty times).</summary>
    public static TallyWeight Strokes(double decibans) => Math.Abs(decibans) switch
    {
        >= 13 => TallyWeight.Decides,
        >= 7 => TallyWeight.Strong,
        >= 3 => TallyWeight.Some,
        _ => TallyWeight.Slight,
    };

    /// <summary>How much a check tells.</summary>
    public static string Tells(CheckWorthMaking check) => Say[$"answers about {100 * check.Share:0} in 100 of what is open"];

    /// <summary>The way to a recall from some causes, with a first wording of the reason that the librarian can change.</summary>
    public static string RecallHref(MixUpView view, params IReadOnlyList<PlacedCause> causes)
    {
        var found = Say.Count(view.Off, $"{view.Off} of {view.Plants.Count} determined plants is not what its packet says.", $"{view.Off} of {view.Plants.Count} determined plants are not what their packets say.");
        var isLikeliest = causes.Count == 1 && view.Causes.Count > 0 && view.Causes[0].Placed == causes[0];
        var what = string.Join("; ", causes.Select(Title));
        var why = $"{found} {(isLikeliest ? Say[$"Likeliest cause: {what}."] : Say[$"A possible cause: {what}."])}";
        return $"/recalls/new?code={Uri.EscapeDataString(Codes(causes))}&why={Uri.EscapeDataString(why.Length <= 300 ? why : why[..300])}";
    }

    /// <summary>The codes to recall from, with commas; empty when there is nothing to call back.</summary>
    public static string Codes(params IReadOnlyList<PlacedCause> causes) => string.Join(',', causes.SelectMany(cause => cause.Scope.Codes).Distinct());
}
