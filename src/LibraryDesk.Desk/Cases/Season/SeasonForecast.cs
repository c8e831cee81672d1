using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Growing;

namespace LibraryDesk.Desk.Cases.Season;

/// <summary>The day from which a plant is worth another look, because it should flower or ripen by then.</summary>
/// <param name="Stage">Stage id of the guide: flowering or ripe-fruit.</param>
/// <param name="Day">The earliest day that the figures allow, so that the look is not missed.</param>
/// <param name="Look">The trait that would tell most then.</param>
/// <param name="Basis">What the day rests on, as the source puts it.</param>
public sealed record SeasonForecast(string Stage, DateOnly Day, string Look, string Basis)
{
    private const string Flowering = "flowering";
    private const string Ripe = "ripe-fruit";

    // A look that tells less than this moves no odds that anybody would notice.
    private const double BitsWorthComing = 0.05;

    /// <summary>
    /// When to come back to a plant that was last looked at on <paramref name="lastLook"/>; null when nothing later would tell more, or
    /// when no figure is known for the species that leads (the desk does not guess).
    /// </summary>
    public static SeasonForecast? Of(CaseRanking ranking, DateOnly lastLook)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        var guide = ranking.Guide.Guide;
        if (ranking.Parts.Count == 0) return null;
        var reached = guide.Parts.Where(p => ranking.Parts.Contains(p.Id)).Select(p => p.Stage).ToHashSet();
        var next = reached.Contains(Ripe) ? null : reached.Contains(Flowering) || reached.Contains("green-fruit") ? Ripe : Flowering;
        if (next is null) return null;

        var look = ranking.Plan.WorthWaitingFor.FirstOrDefault(l => l.Bits >= BitsWorthComing && guide.Parts.Any(p => p.Id == l.Part && p.Stage == next));
        if (look is null || DaysTo(next, ranking.Leader.Id) is not var (days, basis)) return null;
        return new SeasonForecast(next, lastLook.AddDays(days), look.Name, basis);
    }

    /// <summary>
    /// Days from the look to the stage. To flower: the short figure from setting out or sowing, which a plant of unknown age reaches at
    /// the latest if it grows well. To ripe: the short figure to ripe less the short figure to flower.
    /// </summary>
    public static (int Days, string Basis)? DaysTo(string stage, string taxon)
    {
        var flower = First(taxon, "days_transplant_to_flower", "days_sow_to_flower");
        if (stage == Flowering) return flower is null ? null : (flower.Value.Days, flower.Value.Basis);
        if (First(taxon, "days_flower_to_seed") is { } seed) return (seed.Days, seed.Basis);
        var ripe = flower?.Topic == "days_transplant_to_flower"
            ? First(taxon, "days_transplant_to_ripe")
            : First(taxon, "days_sow_to_ripe", "days_sow_to_seed");
        return ripe is { } end && flower is { } start && end.Days > start.Days ? (end.Days - start.Days, end.Basis) : null;
    }

    private static (int Days, string Basis, string Topic)? First(string taxon, params string[] topics)
    {
        foreach (var topic in topics)
        {
            if (GrowingFacts.For(taxon, topic)?.Facts.FirstOrDefault(f => f.Low is not null) is { } fact) return ((int)fact.Low!.Value, fact.Source, topic);
        }
        return null;
    }
}
