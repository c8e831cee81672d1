using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Learning;

/// <summary>
/// Counts of determined plants as a guide carries them: kept apart from the published cells, added to them as Dirichlet counts when the guide is made ready.
/// A plant can be taken out again, which is how each is judged by a guide that never saw it.
/// </summary>
public sealed class DeterminedCounts
{
    /// <summary>What <see cref="CountRow.From"/> says of these counts.</summary>
    public const string From = "determined";

    /// <summary>
    /// Plants of a species, scored for a trait that no source scores for it, before the counts are used. With fewer, smoothing would make a nearly even row of
    /// them, and an even row is evidence where a missing one is none. The desk's own setting, no source.
    /// </summary>
    public const double LeastWithoutSource = 5;

    /// <summary>Plants that the published spread of a measured trait is worth beside the measured ones.</summary>
    private const double SpreadPlants = 2;

    /// <summary>Standard deviation of logarithms where no source gives a range: most organs vary by about a third. The desk's own setting, no source.</summary>
    private const double UsualSpread = 0.3;

    /// <summary>Standard deviations between the ends of the middle 80 % of a normal law.</summary>
    private const double MiddleEighty = 2 * 1.2816;

    private readonly CompiledGuide _basis;
    private readonly Dictionary<CountKey, Moments> _total = [];

    /// <param name="basis">The guide without counts of determined plants, see <see cref="WithoutIn"/>.</param>
    public DeterminedCounts(CompiledGuide basis, IEnumerable<PlantCounts> plants)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(plants);
        _basis = basis;
        foreach (var plant in plants) Add(plant);
    }

    /// <summary>The guide without the counts of determined plants and of answers on them; others, such as those of labelled sheets, stay.</summary>
    public static CropGuide WithoutIn(CropGuide guide)
    {
        ArgumentNullException.ThrowIfNull(guide);
        return guide with { Counts = [.. guide.Counts.Where(c => c.From != From)], Answers = [.. guide.Answers.Where(c => c.From != From)] };
    }

    /// <summary>True where a guide carries such counts.</summary>
    public static bool AreIn(CropGuide guide)
    {
        ArgumentNullException.ThrowIfNull(guide);
        return guide.Counts.Any(c => c.From == From) || guide.Answers.Any(c => c.From == From);
    }

    /// <summary>The guide with the counts of all plants.</summary>
    public CropGuide Guide() => With(_total);

    /// <summary>
    /// The guide as if this plant, which must be among them, had never been seen, cut down to the given traits. A ranking rests on the traits that were answered,
    /// so for a plant answered in these it is the ranking of the whole guide, at a fraction of the work.
    /// </summary>
    public CropGuide GuideWithout(PlantCounts plant, IReadOnlySet<string> traits)
    {
        ArgumentNullException.ThrowIfNull(plant);
        ArgumentNullException.ThrowIfNull(traits);
        var rest = _total.Where(c => traits.Contains(c.Key.Trait)).ToDictionary();
        foreach (var (key, part) in plant.Parts)
        {
            if (rest.ContainsKey(key)) rest[key] -= part;
        }

        var guide = With(rest);
        return guide with
        {
            Traits = [.. guide.Traits.Where(t => traits.Contains(t.Id))],
            Cells = [.. guide.Cells.Where(c => traits.Contains(c.Trait))],
            Counts = [.. guide.Counts.Where(c => traits.Contains(c.Trait))],
        };
    }

    private void Add(PlantCounts plant)
    {
        foreach (var (key, part) in plant.Parts) _total[key] = _total.GetValueOrDefault(key) + part;
    }

    private CropGuide With(Dictionary<CountKey, Moments> counts)
    {
        var plants = counts.GroupBy(c => (Taxon: c.Key.Of.Split('/')[0], c.Key.Trait)).ToDictionary(g => g.Key, g => g.Sum(c => c.Value.Weight));
        var rows = counts
            .Where(c => c.Value.Weight > 1e-6)
            .Where(c => IsPublished(c.Key) || plants[(c.Key.Of.Split('/')[0], c.Key.Trait)] >= LeastWithoutSource)
            .OrderBy(c => c.Key.Of, StringComparer.Ordinal).ThenBy(c => c.Key.Trait, StringComparer.Ordinal).ThenBy(c => c.Key.State, StringComparer.Ordinal)
            .Select(c => Row(c.Key, c.Value));
        return _basis.Guide with { Counts = [.. _basis.Guide.Counts, .. rows] };
    }

    private bool IsPublished(CountKey key) => Published(key) is var (candidate, form) &&
        (_basis.Frequencies(candidate, form, key.Trait) is not null || _basis.UsualRange(candidate, form, key.Trait) is not null);

    private static (string Candidate, string? Form) Published(CountKey key) =>
        key.Of.Split('/', 2) is [var candidate, var form] ? (candidate, form) : (key.Of, null);

    private CountRow Row(CountKey key, Moments m)
    {
        var weight = Math.Round(m.Weight, 4);
        if (key.State is not null) return new CountRow(key.Of, key.Trait, key.State, weight, null, null, From, 0);
        var mean = m.Sum / m.Weight;
        var squares = Math.Max(0, m.Squares - (m.Weight * mean * mean));
        var (candidate, form) = Published(key);
        var published = _basis.UsualRange(candidate, form, key.Trait) is { } range && range.Low > 0 ? Math.Log(range.High / range.Low) / MiddleEighty : UsualSpread;
        var variance = (squares + (SpreadPlants * published * published)) / (Math.Max(0, m.Weight - 1) + SpreadPlants);
        return new CountRow(key.Of, key.Trait, null, weight, Math.Round(mean, 6), Math.Round(Math.Sqrt(variance), 6), From, 0);
    }
}
