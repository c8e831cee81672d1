using System.Globalization;
using System.Text;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Learning;

/// <summary>Makes a crop guide of Dirichlet counts, and log-normals for numbers, from plants of known identity.</summary>
public static class GuideLearner
{
    private const string Label = "labelled";

    /// <summary>Plants that the spread within all taxa together is worth when one taxon's own spread is reckoned.</summary>
    private const double PooledSpreadPlants = 2;

    /// <summary>Learns a guide. Needs plants of two taxa or more.</summary>
    /// <param name="vocabulary">Plants whose traits and states the guide must know though they are not learned from, or null.</param>
    public static CropGuide Learn(IReadOnlyList<LabelledCase> cases, LearnOptions options, IReadOnlyList<LabelledCase>? vocabulary = null)
    {
        if (options.Smoothing is { } smoothing && options.Temper is { } temper) return LearnPlain(cases, options, vocabulary ?? cases, smoothing, temper);
        var (s, t) = HeldOutChoice.Of(cases, options, vocabulary ?? cases);
        return LearnPlain(cases, options, vocabulary ?? cases, s, t);
    }

    internal static CropGuide LearnPlain(IReadOnlyList<LabelledCase> cases, LearnOptions options, IReadOnlyList<LabelledCase> vocabulary, double smoothing, double temper)
    {
        var traits = Traits(vocabulary, options);
        var taxa = vocabulary.Select(c => c.Taxon).Distinct().Order(StringComparer.Ordinal).ToList();
        var counts = new List<CountRow>();
        var values = Values(cases);
        foreach (var trait in traits) AddCounts(values, taxa, trait, options, counts);
        var genus = string.Join(", ", taxa.Select(t => t.Split(' ')[0]).Distinct());
        return new CropGuide(
            options.Id,
            options.Version,
            options.Crop,
            genus,
            [new Source(Label, $"learned from {cases.Count} labelled plants", "")],
            [new Stage("any", "Any stage")],
            [new Part("plant", "Plant", "any")],
            traits,
            [],
            Candidates(cases, taxa, options),
            [],
            counts,
            // What was scored is what was learned from: the scorers' slips are in the counts already.
            ObserverReliability.Perfect,
            smoothing,
            temper);
    }

    /// <summary>The candidate id made of a taxon's name: lower case, hyphens for what is no letter or digit.</summary>
    public static string IdOf(string taxon)
    {
        var id = new StringBuilder(taxon.Length);
        foreach (var c in taxon.Trim().ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c)) id.Append(c);
            else if (id.Length > 0 && id[^1] != '-') id.Append('-');
        }

        return id.ToString().TrimEnd('-');
    }

    private static List<Trait> Traits(IReadOnlyList<LabelledCase> cases, LearnOptions options)
    {
        var states = new Dictionary<string, HashSet<string>>();
        var order = new List<string>();
        foreach (var score in cases.SelectMany(c => c.Scores))
        {
            if (!states.TryGetValue(score.Trait, out var set))
            {
                states[score.Trait] = set = [];
                order.Add(score.Trait);
            }

            set.Add(score.State);
        }

        // A trait that only ever showed one state tells nothing and would be a fault in a guide.
        return [.. order.Where(t => states[t].Count > 1).Select(t => TraitOf(t, states[t], options))];
    }

    private static Trait TraitOf(string id, HashSet<string> states, LearnOptions options)
    {
        var numbers = states.Select(s => Number(s)).ToList();
        var isNumeric = numbers.All(n => n is not null);
        var isMeasured = isNumeric && states.Count > options.DistinctForMeasured && numbers.All(n => n > 0);
        var name = id.Replace('_', ' ').Replace('.', ' ');
        var ordered = isNumeric ? states.OrderBy(s => Number(s)) : states.OrderBy(s => s, StringComparer.Ordinal);
        return new Trait(
            id, name, $"What is the {name}?", null, null, "plant", Effort.Look, 1,
            isMeasured ? TraitKind.Measured : isNumeric ? TraitKind.Ordered : TraitKind.Unordered,
            isMeasured ? UnitOf(id) : null,
            VariesWithinPlant: false, Asked: true, null, null,
            isMeasured ? [] : [.. ordered.Select(s => new State(s, s, null, null))],
            [],
            Label);
    }

    private static string UnitOf(string trait)
    {
        var end = trait[(trait.LastIndexOf('_') + 1)..];
        return end is "mm" or "cm" or "m" or "g" or "kg" ? end : "as scored";
    }

    private static List<Candidate> Candidates(IReadOnlyList<LabelledCase> cases, List<string> taxa, LearnOptions options)
    {
        var plants = cases.GroupBy(c => c.Taxon).ToDictionary(g => g.Key, g => g.Count());
        double PriorOf(string taxon) => options.IsPriorFlat ? 1.0 / taxa.Count : (plants.GetValueOrDefault(taxon) + 1.0) / (cases.Count + taxa.Count);
        return [.. taxa.Select(t => new Candidate(
            IdOf(t), t, null, CandidateKind.Species, Domesticated: true, PriorOf(t),
            options.IsPriorFlat ? "all taxa alike" : $"{plants.GetValueOrDefault(t)} of {cases.Count} labelled plants",
            [], null, [Label], [], []))];
    }

    /// <summary>Scores by trait and taxon. One plant is one plant: several states of it share its count.</summary>
    private static Dictionary<(string Trait, string Taxon), List<(string State, double Weight)>> Values(IReadOnlyList<LabelledCase> cases)
    {
        var values = new Dictionary<(string Trait, string Taxon), List<(string State, double Weight)>>();
        foreach (var one in cases)
        {
            foreach (var score in one.Scores)
            {
                if (!values.TryGetValue((score.Trait, one.Taxon), out var list)) values[(score.Trait, one.Taxon)] = list = [];
                var together = 0;
                foreach (var other in one.Scores)
                {
                    if (other.Trait == score.Trait) together++;
                }

                list.Add((score.State, 1.0 / together));
            }
        }

        return values;
    }

    private static void AddCounts(Dictionary<(string Trait, string Taxon), List<(string State, double Weight)>> values, List<string> taxa, Trait trait, LearnOptions options, List<CountRow> counts)
    {
        if (trait.Kind == TraitKind.Measured)
        {
            AddMeasured(taxa, trait, taxa.ToDictionary(t => t, t => values.GetValueOrDefault((trait.Id, t)) ?? []), counts);
            return;
        }

        foreach (var taxon in taxa)
        {
            var seen = values.GetValueOrDefault((trait.Id, taxon)) ?? [];
            foreach (var state in seen.GroupBy(v => v.State).OrderBy(g => g.Key, StringComparer.Ordinal))
            {
                counts.Add(new CountRow(IdOf(taxon), trait.Id, state.Key, state.Sum(v => v.Weight), null, null, Label, 0));
            }

            if (seen.Count == 0 && options.IsUnseenSmoothed) counts.Add(new CountRow(IdOf(taxon), trait.Id, trait.States[0].Id, 0, null, null, Label, 0));
        }
    }

    private static void AddMeasured(List<string> taxa, Trait trait, Dictionary<string, List<(string State, double Weight)>> values, List<CountRow> counts)
    {
        var logs = taxa.ToDictionary(t => t, t => values[t].Select(v => (Log: Math.Log(Number(v.State)!.Value), v.Weight)).ToList());
        double Plants(string t) => logs[t].Sum(v => v.Weight);
        double Mean(string t) => logs[t].Sum(v => v.Weight * v.Log) / Plants(t);
        double Squares(string t) => logs[t].Sum(v => v.Weight * (v.Log - Mean(t)) * (v.Log - Mean(t)));
        var known = taxa.Where(t => logs[t].Count > 0).ToList();
        var pooled = Math.Max(known.Sum(Squares) / Math.Max(1, known.Sum(Plants) - known.Count), 1e-4);
        foreach (var taxon in known)
        {
            var variance = (Squares(taxon) + (PooledSpreadPlants * pooled)) / (Math.Max(0, Plants(taxon) - 1) + PooledSpreadPlants);
            counts.Add(new CountRow(IdOf(taxon), trait.Id, null, Plants(taxon), Mean(taxon), Math.Sqrt(variance), Label, 0));
        }
    }

    internal static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
