using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Learning;

/// <summary>What one determined plant adds to a guide's counts.</summary>
/// <remarks>
/// A determination names a species, never a form, so the plant is shared among the species' forms by how well each explains it: the expectation step of
/// A. P. Dempster, N. M. Laird and D. B. Rubin 1977, Journal of the Royal Statistical Society B 39: 1-38. Counted on the species alone, a plant would count
/// fully towards every form, the ones it does not look like too.
/// </remarks>
public sealed class PlantCounts
{
    /// <summary>A share of a plant below this is left out; it would only lengthen the guide.</summary>
    private const double Least = 0.005;

    private PlantCounts(string taxon, Dictionary<CountKey, Moments> parts)
    {
        Taxon = taxon;
        Parts = parts;
    }

    /// <summary>Candidate id.</summary>
    public string Taxon { get; }

    internal IReadOnlyDictionary<CountKey, Moments> Parts { get; }

    /// <summary>Counts one plant.</summary>
    /// <param name="basis">The guide without counts of determined plants: what forms are must not depend on the order in which plants came.</param>
    /// <param name="taxon">Candidate id; a candidate the guide does not have, or "something else", counts nothing.</param>
    /// <param name="evidence">The plant's answers, checked against <paramref name="basis"/>.</param>
    public static PlantCounts Of(CompiledGuide basis, string taxon, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(evidence);
        var parts = new Dictionary<CountKey, Moments>();
        if (basis.Guide.FindCandidate(taxon) is { Kind: not CandidateKind.SomethingElse })
        {
            var forms = Ranker.Rank(basis, evidence, new Prior(Among: [taxon])).Forms;
            foreach (var trait in evidence.Traits)
            {
                foreach (var form in forms.Where(f => f.Probability >= Least)) Add(parts, evidence, trait, form);
            }
        }

        return new PlantCounts(taxon, parts);
    }

    private static void Add(Dictionary<CountKey, Moments> parts, Evidence evidence, TraitEvidence trait, RankedForm form)
    {
        var of = form.Form is null ? form.Candidate : form.Candidate + "/" + form.Form;
        var id = trait.Trait.Trait.Id;
        if (trait.Trait.Scale is not null)
        {
            parts[new CountKey(of, id, null)] = Moments.Of(form.Probability, MeanLog(evidence, id));
            return;
        }

        var shares = Shares(trait);
        for (var s = 0; s < shares.Length; s++)
        {
            var weight = form.Probability * shares[s];
            if (weight >= Least) parts[new CountKey(of, id, trait.Trait.Trait.States[s].Id)] = Moments.Of(weight, 0);
        }
    }

    /// <summary>What was there to be seen, every state alike before: one plant shares itself among its states. All 0 where the answers say nothing.</summary>
    private static double[] Shares(TraitEvidence trait)
    {
        var shares = new double[trait.Trait.States];
        var telling = trait.Looks.Where(look => look.Max() - look.Min() > 1e-9).ToList();
        foreach (var look in telling)
        {
            var sum = look.Sum();
            for (var s = 0; s < shares.Length; s++) shares[s] += look[s] / (sum * telling.Count);
        }

        return shares;
    }

    private static double MeanLog(Evidence evidence, string trait)
    {
        var bands = evidence.Answers.Where(a => a.Trait == trait).SelectMany(a => a.Bands).ToList();
        // A range is worth its middle; one that begins at nothing is worth half its end.
        return bands.Average(b => b.Low > 0 ? (Math.Log(b.Low) + Math.Log(b.High)) / 2 : Math.Log(b.High / 2));
    }
}

/// <summary>Of whom, which trait and state; no state for a measured trait.</summary>
internal readonly record struct CountKey(string Of, string Trait, string? State);

/// <summary>A weighted number of plants with the sums that a mean and a spread of logarithms need.</summary>
internal readonly record struct Moments(double Weight, double Sum, double Squares)
{
    public static Moments Of(double weight, double log) => new(weight, weight * log, weight * log * log);

    public static Moments operator +(Moments a, Moments b) => new(a.Weight + b.Weight, a.Sum + b.Sum, a.Squares + b.Squares);

    public static Moments operator -(Moments a, Moments b) => new(a.Weight - b.Weight, a.Sum - b.Sum, a.Squares - b.Squares);
}
