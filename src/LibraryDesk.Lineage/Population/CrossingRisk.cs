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

/// <summary>A published least distance between varieties.</summary>
/// <param name="Purpose">What it is for, such as "seed to share" or "certified seed".</param>
/// <param name="Metres">The distance.</param>
/// <param name="Source">Who says so.</param>
public sealed record LeastDistance(string Purpose, int Metres, string Source);

/// <summary>The statement with what it rests on.</summary>
/// <param name="Grade">The grade.</param>
/// <param name="Why">One sentence a reason, for the screen.</param>
/// <param name="Against">The published distance it was judged by; null when none was needed or given.</param>
public sealed record CrossingRisk(CrossingGrade Grade, IReadOnlyList<string> Why, LeastDistance? Against)
{
    /// <summary>Judges one growing.</summary>
    /// <param name="facts">What the grower told.</param>
    /// <param name="isSelfing">True for a species that mainly selfs and seldom crosses; null when not known, and then it is judged as one that crosses.</param>
    /// <param name="least">The distance that the library chose to judge by; null when it has none for this species.</param>
    public static CrossingRisk Of(GrowOutFacts facts, bool? isSelfing, LeastDistance? least)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.OthersInFlower == false) return new(CrossingGrade.Slight, ["Nothing else of the species flowered nearby at the time."], null);
        if (facts.Isolation is Isolation.Bagged or Isolation.Caged or Isolation.HandPollinated)
        {
            return new(CrossingGrade.Slight, [facts.Isolation == Isolation.HandPollinated ? "Pollinated by hand, with the flowers kept shut." : "Insects were kept out by bags or a cage."], null);
        }

        if (facts.NearestMetres is { } metres && least is not null) return ByDistance(metres, isSelfing, least);
        if (facts.Isolation == Isolation.Time) return new(CrossingGrade.Some, ["It flowered at another time, but how far apart was not told."], least);
        if (facts.OthersInFlower is null) return new(CrossingGrade.NotKnown, ["It was not told whether another variety flowered nearby, nor how far off."], least);
        return isSelfing == true
            ? new(CrossingGrade.Some, ["Another variety flowered nearby. The species mainly pollinates itself, but insects do cross it."], least)
            : new(CrossingGrade.High, ["Another variety flowered nearby, and nothing kept the pollen out."], least);
    }

    private static CrossingRisk ByDistance(int metres, bool? isSelfing, LeastDistance least)
    {
        if (metres >= least.Metres) return new(CrossingGrade.Low, [$"The nearest other variety was {metres} m off; {least.Metres} m are asked for ({least.Purpose})."], least);
        var grade = isSelfing == true || metres * 2 >= least.Metres ? CrossingGrade.Some : CrossingGrade.High;
        return new(grade, [$"The nearest other variety was {metres} m off, less than the {least.Metres} m asked for ({least.Purpose})."], least);
    }
}
