using LibraryDesk.Desk.Growing;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Population;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Population;

/// <summary>An accession's part in a lot.</summary>
public sealed record FounderPart(string Code, DateOnly On, double Share);

/// <summary>One growing above a lot.</summary>
/// <param name="GrowOut">What was told.</param>
/// <param name="FromCode">The packet or lot it was sown from.</param>
/// <param name="Generation">Plants saved from and Ne.</param>
/// <param name="Risk">How likely it crossed.</param>
/// <param name="Warnings">Published numbers of plants it falls short of.</param>
public sealed record GrowingJudged(GrowOut GrowOut, string FromCode, Generation Generation, CrossingRisk Risk, IReadOnlyList<PopulationWarning> Warnings);

/// <summary>A lot as a population: what the lineage and the published figures say of it. Nothing is read from the database.</summary>
/// <param name="Population">Effective sizes, heterozygosity, founders and generations.</param>
/// <param name="HarmonicSize">The one size that would drift alike; null without a growing that told its plants.</param>
/// <param name="Founders">Each accession's part, largest first.</param>
/// <param name="Growings">The growings above it, oldest first.</param>
/// <param name="Outcrossing">The published share of crosses that stands behind the selfing; null when none is published, and then no selfing is reckoned.</param>
/// <param name="Least">The distance that growings were judged by; null when none is published.</param>
/// <param name="Distances">All published distances of the species.</param>
/// <param name="LeastPlants">Published least numbers of plants.</param>
public sealed record PopulationFacts(
    LotPopulation Population,
    double? HarmonicSize,
    IReadOnlyList<FounderPart> Founders,
    IReadOnlyList<GrowingJudged> Growings,
    GrowingFact? Outcrossing,
    LeastDistance? Least,
    IReadOnlyList<GrowingFact> Distances,
    IReadOnlyList<LeastPlants> LeastPlants)
{
    /// <summary>The facts of a lot.</summary>
    /// <param name="state">Everything upstream of it.</param>
    /// <param name="lot">The lot.</param>
    /// <param name="species">Its species; null when not known, and then nothing published is held against it.</param>
    /// <param name="isolationTopic">The class of distance the library judges by.</param>
    public static PopulationFacts Of(SeedState state, NodeId lot, string? species, string isolationTopic)
    {
        ArgumentNullException.ThrowIfNull(state);
        var graph = LineageGraph.Of(state);
        var told = state.GrowOuts.ToDictionary(growOut => growOut.Id.Node, growOut => growOut.Facts);
        var outcrossing = GrowingAdvice.Outcrossing(species);
        var selfed = outcrossing is null ? 0 : Math.Clamp(1 - ((outcrossing.Low!.Value + outcrossing.High!.Value) / 200), 0, 1);
        var population = LotPopulation.Of(graph, lot, told, selfed);
        var leastPlants = GrowingAdvice.LeastPlants(species);
        var warnings = PopulationWarning.For(population, leastPlants).ToLookup(warning => warning.GrowOut);
        var least = GrowingAdvice.Least(species, isolationTopic);
        var isSelfing = GrowingAdvice.IsSelfing(species);
        return new(
            population,
            EffectiveSize.HarmonicMean([.. population.Line.Select(generation => generation.EffectiveSize).OfType<double>()]),
            [.. population.Founders.OrderByDescending(part => part.Value).ThenBy(part => part.Key.Value).Select(part => new FounderPart(graph[part.Key].Label, graph[part.Key].On, part.Value))],
            [.. population.Line.Select(generation =>
            {
                var growOut = state.Find(new GrowOutId(generation.Node.Value))!;
                var from = graph.Above(generation.Node);
                return new GrowingJudged(growOut, from.Count > 0 ? graph[from[0].Parent].Label : "", generation, CrossingRisk.Of(growOut.Facts, isSelfing, least), [.. warnings[generation.Node]]);
            })],
            outcrossing,
            least,
            GrowingAdvice.Distances(species),
            leastPlants);
    }
}
