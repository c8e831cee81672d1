using System.Globalization;
using LibraryDesk.Desk.Growing;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Population;
using static LibraryDesk.Web.Features.Returns.ReturnsText;

namespace LibraryDesk.Web.Features.Returns;

/// <summary>A published distance held against the one told.</summary>
/// <param name="Figure">As in "15 to 50 m".</param>
/// <param name="Fact">The figure with its source.</param>
/// <param name="IsKept">True when the distance told is at least the lower figure; null when no distance was told.</param>
public sealed record DistanceCheck(string Figure, GrowingFact Fact, bool? IsKept);

/// <summary>What the library will make of seed that comes home, worked out from the answers so far; nothing is written.</summary>
/// <param name="Claim">The variety the new lot will claim by the grower's word; null when it will claim none.</param>
/// <param name="WhyNoClaim">Why it will claim none; null when it will.</param>
/// <param name="EffectiveSize">Ne of this generation; null when the plants saved from were not told.</param>
/// <param name="Kept">Part of the heterozygosity this generation keeps; null with <paramref name="EffectiveSize"/>.</param>
/// <param name="Crossing">How likely it crossed.</param>
/// <param name="Distances">Published distances, each against the one told.</param>
/// <param name="Plants">Published numbers of plants to keep a variety, each with its source.</param>
public sealed record ReturnForecast(
    string? Claim, string? WhyNoClaim, double? EffectiveSize, double? Kept, CrossingRisk Crossing, IReadOnlyList<DistanceCheck> Distances, IReadOnlyList<GrowingFact> Plants)
{
    private static readonly string[] DistanceTopics = ["isolation_home_m", "isolation_share_m"];

    /// <param name="packet">The packet it was grown from.</param>
    /// <param name="facts">What the grower told so far.</param>
    /// <param name="stakeStayed">True when the label stayed with the plants.</param>
    /// <param name="isolationTopic">The class of published distance that the library judges by.</param>
    public static ReturnForecast Of(PacketView packet, GrowOutFacts facts, bool stakeStayed, string isolationTopic = GrowingAdvice.DefaultIsolation)
    {
        ArgumentNullException.ThrowIfNull(packet);
        ArgumentNullException.ThrowIfNull(facts);
        var whyNot = (packet.Name, stakeStayed) switch
        {
            (_, false) => Say["The stake did not stay with the plants, so the lot is held with its name in doubt."],
            ({ Variety: null }, _) => Say["The parent has no variety name, so the new lot has none either."],
            ({ OthersToo: true }, _) => Say["The parent is a blend of several names, so none is claimed."],
            _ => null,
        };
        double? size = facts.PlantsSavedFrom is > 0 and var plants ? Lineage.Population.EffectiveSize.FromVariance(plants, Lineage.Population.EffectiveSize.VarianceOf(facts.Harvest)) : null;
        var distances = packet.Name.Species is { } species ? DistancesFor(species, facts) : [];
        return new(
            whyNot is null ? packet.Name.Variety : null, whyNot, size, size is >= 0.5 ? Lineage.Population.EffectiveSize.HeterozygosityKept([size.Value]) : null,
            CrossingRisk.Of(facts, GrowingAdvice.IsSelfing(packet.Name.Species), GrowingAdvice.Least(packet.Name.Species, isolationTopic)), distances, PlantsFor(packet.Name.Species));
    }

    private static IReadOnlyList<DistanceCheck> DistancesFor(string species, GrowOutFacts facts) =>
    [
        .. DistanceTopics.Select(topic => GrowingFacts.For(species, topic)).OfType<GrowingTopic>().SelectMany(topic => topic.Facts)
            .Where(fact => fact.Figure is not null).Select(fact => new DistanceCheck(fact.Figure!, fact, facts.NearestMetres is { } metres && fact.Low is { } low ? metres >= low : null)),
    ];

    private static IReadOnlyList<GrowingFact> PlantsFor(string? species) =>
        species is not null && GrowingFacts.For(species, "plants_maintain") is { } topic ? topic.Facts : [];

    /// <summary>Ne in words, one decimal at most.</summary>
    public string SizeText => EffectiveSize is { } size ? size.ToString("0.#", CultureInfo.CurrentCulture) : "";

    /// <summary>The heterozygosity kept, in a hundred.</summary>
    public string KeptText => Kept is { } kept ? (kept * 100).ToString("0", CultureInfo.InvariantCulture) : "";
}
