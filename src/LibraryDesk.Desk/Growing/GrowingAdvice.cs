using LibraryDesk.Lineage.Population;

namespace LibraryDesk.Desk.Growing;

/// <summary>The figures of <see cref="GrowingFacts"/> as the population reckoning takes them. Sources stand side by side; the library chooses which class of distance to judge by.</summary>
public static class GrowingAdvice
{
    /// <summary>The class of distance a new library judges by.</summary>
    public const string DefaultIsolation = "isolation_share_m";

    /// <summary>Classes of isolation distance to choose from, nearest first.</summary>
    public static IReadOnlyList<string> IsolationTopics { get; } =
        ["isolation_home_m", DefaultIsolation, "isolation_certified_m", "isolation_foundation_m", "isolation_commercial_m"];

    /// <summary>Published distances of a species, all classes, in the order of <see cref="IsolationTopics"/>.</summary>
    public static IReadOnlyList<GrowingFact> Distances(string? species) =>
        species is null ? [] : [.. IsolationTopics.Select(topic => GrowingFacts.For(species, topic)).OfType<GrowingTopic>().SelectMany(topic => topic.Facts).Where(fact => fact.Low is not null)];

    /// <summary>The name of a class in plain words, in the reader's language; the id where the file has none.</summary>
    public static string TopicName(string topic) => GrowingFacts.NameOf(topic) ?? topic;

    /// <summary>The distance to judge by: the farthest of the chosen class, or where the species has none of it, of the next class that it has; null when none is published.</summary>
    public static LeastDistance? Least(string? species, string chosen)
    {
        var known = Distances(species);
        var topic = new[] { chosen }.Concat(IsolationTopics).FirstOrDefault(topic => known.Any(fact => fact.Topic == topic));
        var farthest = known.Where(fact => fact.Topic == topic).MaxBy(fact => fact.Low);
        return farthest is null ? null : new(TopicName(farthest.Topic), (int)farthest.Low!.Value, $"{farthest.Source} ({GrowingWords.Basis(farthest)})");
    }

    /// <summary>True for a species that mainly selfs; null when nothing is known of it.</summary>
    public static bool? IsSelfing(string? species) =>
        species is not null && GrowingFacts.For(species, "breeding_system") is { } system ? system.Facts.Any(fact => fact.Term?.StartsWith("self", StringComparison.OrdinalIgnoreCase) == true) : null;

    /// <summary>Published least numbers of plants to save from.</summary>
    public static IReadOnlyList<LeastPlants> LeastPlants(string? species)
    {
        if (species is null) return [];
        string[] topics = IsSelfing(species) == true ? ["plants_maintain", "plants_maintain_selfers", "plants_rare"] : ["plants_maintain", "plants_rare"];
        return [.. topics.Select(topic => GrowingFacts.For(species, topic)).OfType<GrowingTopic>()
            .SelectMany(topic => topic.Facts.Where(fact => fact.Low is not null).Select(fact => new LeastPlants(topic.Name, (int)fact.Low!.Value, $"{fact.Source} ({GrowingWords.Basis(fact)})")))];
    }

    /// <summary>The published share of seed from crosses that stands for the species: the figure with the narrowest range; null when none is published.</summary>
    public static GrowingFact? Outcrossing(string? species) =>
        species is null ? null : GrowingFacts.For(species, "outcrossing_percent")?.Facts.Where(fact => fact is { Low: not null, High: not null }).MinBy(fact => fact.High - fact.Low);
}
