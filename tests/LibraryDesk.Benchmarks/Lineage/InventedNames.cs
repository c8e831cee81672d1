using LibraryDesk.Data.Seeds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Names for a large library, put together from syllables: a few are borne by many lots, most by few. Half of them have a record of how they look.</summary>
internal sealed class InventedNames
{
    private static readonly string[] First = ["Millrace", "Harrow", "Weir", "Tallow", "Quay", "Lantern", "Ferry", "Orchard", "Cinder", "Marl", "Heron", "Copse", "Barley", "Thistle", "Fennel", "Ridge", "Sluice", "Amber", "Dapple", "Moss"];
    private static readonly string[] Second = ["Red", "Gold", "Lamp", "Bell", "Spear", "Drop", "Horn", "Torch", "Button", "Ember", "Dusk", "Candle", "Ribbon", "Thimble", "Sickle", "Crown", "Whistle", "Basket", "Feather", "Anvil"];
    private static readonly string[] Start = ["Ba", "Bre", "Ci", "Dro", "Du", "Fe", "Gla", "Go", "Ha", "Ju", "Ka", "Lo", "Me", "Mu", "No", "Pe", "Pri", "Ro", "Se", "Ste", "Ta", "Tru", "Va", "We", "Yo"];
    private static readonly string[] Middle = ["ba", "do", "fi", "ga", "lo", "ma", "ne", "pi", "ro", "su", "ti", "vo"];
    private static readonly string[] End = ["beck", "cott", "dale", "fen", "grim", "holt", "kin", "low", "mond", "nock", "pell", "rick", "sing", "thorp", "vane", "wick"];
    private readonly string[] _varieties;

    /// <param name="random">Two libraries of the same seed have the same names.</param>
    /// <param name="count">How many varieties.</param>
    public InventedNames(Random random, int count)
    {
        ArgumentNullException.ThrowIfNull(random);
        var names = new HashSet<string>();
        while (names.Count < count) names.Add(random.Next(3) == 0 && names.Count < 300 ? $"{Any(random, First)} {Any(random, Second)}" : $"{Word(random)} {Any(random, Second)}");
        _varieties = [.. names];
    }

    /// <summary>A name; those at the head of the list come up more often.</summary>
    public string Variety(Random random) => _varieties[(int)(_varieties.Length * Math.Pow(random.NextDouble(), 3))];

    /// <summary>People who gave seed.</summary>
    public static DonorRow[] Donors(Random random, IEnumerable<Guid> people) => [.. people.Select(person => new DonorRow { Id = person, Name = $"{Word(random)} {Word(random)}" })];

    /// <summary>What the library means by every other name, with two traits of the pepper guide.</summary>
    public static VarietyRow[] Records(Random random, IEnumerable<(string Species, string Name)> names)
    {
        var guide = BuiltInGuides.Open("capsicum")?.Guide ?? throw new InvalidOperationException("The pepper guide is not there.");
        var traits = guide.Traits.Where(trait => trait.States.Count > 1).ToArray();
        string Looks()
        {
            var trait = traits[random.Next(traits.Length)];
            return $"{trait.Id}={trait.States[random.Next(trait.States.Count)].Id}";
        }

        return [.. names.Where((_, at) => at % 2 == 0).Select((of, at) => new VarietyRow { Id = at + 1, Species = of.Species, Name = of.Name, NormalizedName = of.Name.ToUpperInvariant(), Traits = Looks() + "\n" + Looks() })];
    }

    private static string Word(Random random) => Any(random, Start) + Any(random, Middle) + Any(random, End);

    private static string Any(Random random, string[] of) => of[random.Next(of.Length)];
}
