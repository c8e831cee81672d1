using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Benchmarks.Sessions;

/// <summary>A plant drawn from one form of a guide. What a person says of a trait is drawn once, slips included, and is the same whoever asks.</summary>
internal sealed class SimulatedPlant
{
    /// <summary>One answer in a hundred names another state.</summary>
    private const double Slip = 0.01;

    /// <summary>Standard normal deviates from the tenth to the ninetieth percentile.</summary>
    private const double Width80 = 2.563;

    private readonly Dictionary<string, Answer> _said = [];

    private SimulatedPlant(string species) => Species = species;

    public string Species { get; }

    public static SimulatedPlant Draw(CompiledGuide guide, IReadOnlyList<string> among, Random random)
    {
        var species = guide.Guide.FindCandidate(among[random.Next(among.Count)])!;
        var plant = new SimulatedPlant(species.Id);
        var form = FormOf(species, random);
        foreach (var trait in guide.Guide.Traits)
        {
            if (Answer(guide, among, species.Id, form, trait, random) is { } answer) plant._said[trait.Id] = answer;
        }

        return plant;
    }

    /// <summary>What is said of a trait; null where no candidate has cells for it.</summary>
    public Answer? Said(string trait) => _said.GetValueOrDefault(trait);

    /// <summary>The state said of a trait that is not measured; empty where nothing can be said.</summary>
    public string State(string trait) => Said(trait) is { States: [var state] } ? state : "";

    private static string? FormOf(Candidate species, Random random)
    {
        var u = random.NextDouble();
        foreach (var form in species.Forms)
        {
            if ((u -= form.Weight) < 0) return form.Id;
        }

        return species.Forms.Count == 0 ? null : species.Forms[^1].Id;
    }

    private static Answer? Answer(CompiledGuide guide, IReadOnlyList<string> among, string species, string? form, Trait trait, Random random)
    {
        // Where the guide knows nothing of the species the plant is drawn as one of the others: the guide claims no more than that.
        var others = among.Where(c => c != species).OrderBy(_ => random.Next()).Select(c => (Species: c, Form: (string?)null));
        foreach (var (candidate, ofForm) in others.Prepend((species, form)))
        {
            if (trait.Kind == TraitKind.Measured && guide.UsualRange(candidate, ofForm, trait.Id) is { } range) return Measure(trait, range, random);
            if (trait.Kind != TraitKind.Measured && guide.Frequencies(candidate, ofForm, trait.Id) is { } shares) return Name(trait, shares, random);
        }

        return null;
    }

    private static Answer Measure(Trait trait, (double Low, double High) range, Random random)
    {
        var normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var middle = (Math.Log(range.Low) + Math.Log(range.High)) / 2;
        return Identification.Answers.Answer.Measured(trait.Id, Math.Exp(middle + (normal * Math.Log(range.High / range.Low) / Width80)));
    }

    private static Answer Name(Trait trait, IReadOnlyList<double> shares, Random random)
    {
        var u = random.NextDouble();
        var s = 0;
        while (s < shares.Count - 1 && (u -= shares[s]) > 0) s++;
        if (random.NextDouble() < Slip) s = (s + 1 + random.Next(shares.Count - 1)) % shares.Count;
        return Identification.Answers.Answer.Of(trait.Id, trait.States[s].Id);
    }
}
