using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Population;
using static LibraryDesk.Web.Features.SeedLineage.SeedLineageText;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>Why seed may have crossed, in words.</summary>
internal static class CrossingWords
{
    public static string Grade(CrossingGrade grade) => grade switch
    {
        CrossingGrade.Slight => Say["Hardly any risk"],
        CrossingGrade.Low => Say["Low risk"],
        CrossingGrade.Some => Say["Some risk"],
        CrossingGrade.High => Say["High risk"],
        _ => Say["Not known"],
    };

    public static string Why(CrossingRisk risk) => (risk.Reason, risk.Against) switch
    {
        (CrossingReason.NothingFlowered, _) => Say["Nothing else of the species flowered nearby at the time."],
        (CrossingReason.ByHand, _) => Say["Pollinated by hand, with the flowers kept shut."],
        (CrossingReason.KeptOut, _) => Say["Insects were kept out by bags or a cage."],
        (CrossingReason.FarEnough, { } least) => Say[$"The nearest other variety was {Off(risk)} off; {Measures.Metres(least.Metres)} are asked for ({least.Purpose})."],
        (CrossingReason.TooNear, { } least) => Say[$"The nearest other variety was {Off(risk)} off, less than the {Measures.Metres(least.Metres)} asked for ({least.Purpose})."],
        (CrossingReason.OtherTime, _) => Say["It flowered at another time, but how far apart was not told."],
        (CrossingReason.SelfsMainly, _) => Say["Another variety flowered nearby. The species mainly pollinates itself, but insects do cross it."],
        (CrossingReason.PollenCame, _) => Say["Another variety flowered nearby, and nothing kept the pollen out."],
        _ => Say["It was not told whether another variety flowered nearby, nor how far off."],
    };

    private static string Off(CrossingRisk risk) => Measures.Metres(risk.Metres ?? 0);
}
