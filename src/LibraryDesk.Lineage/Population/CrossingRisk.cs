using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Population;

/// <summary>How likely a grow-out crossed with another variety: a graded statement, no false precision.</summary>
public enum CrossingGrade
{
    /// <summary>Nothing to cross with, or pollen kept out.</summary>
    Slight,

    /// <summary>Isolated as the chosen source asks.</summary>
    Low,

    /// <summary>Isolated less than the chosen source asks.</summary>
    Some,

    /// <summary>In flower beside another variety, in a species that crosses.</summary>
    High,

    /// <summary>Too little was told.</summary>
    NotKnown,
}

/// <summary>What the grade rests on.</summary>
public enum CrossingReason
{
    /// <summary>Nothing else of the species flowered nearby at the time.</summary>
    NothingFlowered,

    /// <summary>Pollinated by hand, flowers kept shut.</summary>
    ByHand,

    /// <summary>Bags or a cage kept insects out.</summary>
    KeptOut,

    /// <summary>The nearest other variety was as far off as the source asks, or farther.</summary>
    FarEnough,

    /// <summary>It was nearer.</summary>
    TooNear,

    /// <summary>It flowered at another time, but not told how far apart.</summary>
    OtherTime,

    /// <summary>Another variety flowered nearby, in a species that mainly selfs.</summary>
    SelfsMainly,

    /// <summary>Another variety flowered nearby, and nothing kept its pollen out.</summary>
    PollenCame,

    /// <summary>Neither flowering nor distance was told.</summary>
    NotTold,
}

/// <summary>A published least distance between varieties.</summary>
/// <param name="Purpose">What it is for, such as "seed to share" or "certified seed".</param>
/// <param name="Metres">The distance.</param>
/// <param name="Source">Who says so.</param>
public sealed record LeastDistance(string Purpose, int Metres, string Source);

/// <summary>The statement with what it rests on.</summary>
/// <param name="Grade">The grade.</param>
/// <param name="Reason">What it rests on.</param>
/// <param name="Metres">How far off the nearest other variety was; null where that did not count.</param>
/// <param name="Against">The published distance it was judged by; null when none was needed or given.</param>
public sealed record CrossingRisk(CrossingGrade Grade, CrossingReason Reason, int? Metres, LeastDistance? Against)
{
    /// <summary>Judges one growing.</summary>
    /// <param name="facts">What the grower told.</param>
    /// <param name="isSelfing">True for a species that mainly selfs and seldom crosses; null when not known, and then it is judged as one that crosses.</param>
    /// <param name="least">The distance that the library chose to judge by; null when it has none for this species.</param>
    public static CrossingRisk Of(GrowOutFacts facts, bool? isSelfing, LeastDistance? least)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.OthersInFlower == false) return new(CrossingGrade.Slight, CrossingReason.NothingFlowered, null, null);
        if (facts.Isolation is Isolation.Bagged or Isolation.Caged or Isolation.HandPollinated)
        {
            return new(CrossingGrade.Slight, facts.Isolation == Isolation.HandPollinated ? CrossingReason.ByHand : CrossingReason.KeptOut, null, null);
        }

        if (facts.NearestMetres is { } metres && least is not null) return ByDistance(metres, isSelfing, least);
        if (facts.Isolation == Isolation.Time) return new(CrossingGrade.Some, CrossingReason.OtherTime, null, least);
        if (facts.OthersInFlower is null) return new(CrossingGrade.NotKnown, CrossingReason.NotTold, null, least);
        return isSelfing == true
            ? new(CrossingGrade.Some, CrossingReason.SelfsMainly, null, least)
            : new(CrossingGrade.High, CrossingReason.PollenCame, null, least);
    }

    private static CrossingRisk ByDistance(int metres, bool? isSelfing, LeastDistance least)
    {
        if (metres >= least.Metres) return new(CrossingGrade.Low, CrossingReason.FarEnough, metres, least);
        var grade = isSelfing == true || metres * 2 >= least.Metres ? CrossingGrade.Some : CrossingGrade.High;
        return new(grade, CrossingReason.TooNear, metres, least);
    }
}
