using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Population;

/// <summary>A published smallest number of plants to save from. Several stand side by side; the library chooses.</summary>
/// <param name="Purpose">What it is for, such as "to keep a variety".</param>
/// <param name="Plants">The number.</param>
/// <param name="Source">Who says so.</param>
public sealed record LeastPlants(string Purpose, int Plants, string Source);

/// <summary>A growing that was saved from fewer plants than a published number.</summary>
/// <param name="GrowOut">The grow-out.</param>
/// <param name="PlantsSavedFrom">How many it was.</param>
/// <param name="Least">The number it falls short of.</param>
public sealed record PopulationWarning(NodeId GrowOut, int PlantsSavedFrom, LeastPlants Least)
{
    /// <summary>All shortfalls of a line, growing by growing. Growings that did not tell their plants give none.</summary>
    public static IReadOnlyList<PopulationWarning> For(LotPopulation population, IReadOnlyList<LeastPlants> least)
    {
        ArgumentNullException.ThrowIfNull(population);
        ArgumentNullException.ThrowIfNull(least);
        return population.Line
            .Where(generation => generation.PlantsSavedFrom is not null)
            .SelectMany(generation => least.Where(published => generation.PlantsSavedFrom < published.Plants).Select(published => new PopulationWarning(generation.Node, generation.PlantsSavedFrom!.Value, published)))
            .ToArray();
    }
}
