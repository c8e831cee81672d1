using System.Globalization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>A made-up guide of many candidates with every cell filled.</summary>
internal static class LargeGuide
{
    public const int Candidates = 5000;
    public const int Traits = 60;
    public const int States = 4;

    public static CropGuide Make()
    {
        var random = new Random(11);
        var states = Enumerable.Range(0, States).Select(s => new State($"s{s}", $"state {s}", null, null)).ToList();
        var traits = Enumerable.Range(0, Traits).Select(t => new Trait(Name("t", t), Name("trait ", t), "Which?", null, null, "plant", Effort.Look, 1, TraitKind.Unordered, null, false, true, null, null, states, [], "made-up")).ToList();
        var candidates = Enumerable.Range(0, Candidates).Select(c => new Candidate(Name("c", c), Name("candidate ", c), null, CandidateKind.Species, false, 1.0 / Candidates, null, [], null, [], [], [])).ToList();
        var counts = new List<CountRow>(Candidates * Traits * States);
        foreach (var candidate in candidates)
        {
            foreach (var trait in traits)
            {
                // Cubes of uniform numbers: most states rare, one or two common, as in real tables.
                foreach (var state in states) counts.Add(new CountRow(candidate.Id, trait.Id, state.Id, 20 * Math.Pow(random.NextDouble(), 3), null, null, "made-up", 0));
            }
        }

        return new CropGuide("large", "1", "Made-up plants", "Fictus", [new Source("made-up", "drawn at random", "")], [new Stage("any", "Any")], [new Part("plant", "Plant", "any")], traits, [], candidates, [], counts);
    }

    private static string Name(string stem, int i) => stem + i.ToString(CultureInfo.InvariantCulture);
}
