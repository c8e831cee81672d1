using System.Globalization;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Benchmarks.Sessions;

/// <summary>Sessions led by the best next look against a printed key walked on the same simulated plants, with the same slips and a flat prior.</summary>
internal static class SessionBenchmark
{
    private const int Plants = 2000;
    private const int MostLooks = 12;
    private const double Sure = 0.95;

    private static readonly int[] Milestones = [1, 2, 3, 4, 5, 6, 8, 12];

    private static readonly string[] Five = ["capsicum-annuum", "capsicum-baccatum", "capsicum-chinense", "capsicum-frutescens", "capsicum-pubescens"];

    public static async Task RunAsync(TextWriter output)
    {
        var guide = CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!);
        var random = new Random(1983);
        var prior = new Prior(IsFlat: true, Among: Five);
        List<(bool Right, int Looks)> desk = [], key = [];
        for (var i = 0; i < Plants; i++)
        {
            var plant = SimulatedPlant.Draw(guide, Five, random);
            desk.Add(Session(guide, prior, plant));
            var (species, looks) = PrintedKey.Walk(plant);
            key.Add((species == plant.Species, looks));
        }

        await output.WriteLineAsync("| way | looks: 10 % | median | 90 % | wrong | right and done by look 1, 2, 3, 4, 5, 6, 8, 12 |");
        await output.WriteLineAsync("|---|---|---|---|---|---|");
        await RowAsync(output, "best next look until 0.95", desk);
        await RowAsync(output, "printed key", key);
    }

    private static (bool Right, int Looks) Session(CompiledGuide guide, Prior prior, SimulatedPlant plant)
    {
        var answers = new List<Answer>();
        for (var looks = 0; ; looks++)
        {
            var evidence = Evidence.Check(guide, answers).Evidence!;
            var first = Ranker.Rank(guide, evidence, prior).Candidates[0];
            var plan = LookPlanner.Plan(guide, evidence, prior, most: 1, withOutlooks: false).Now;
            var next = looks == MostLooks || plan.Count == 0 ? null : plan[0];
            if (first.Probability >= Sure || next is null || plant.Said(next.Trait) is not { } answer) return (first.Id == plant.Species, looks);
            answers.Add(answer);
        }
    }

    private static Task RowAsync(TextWriter output, string way, List<(bool Right, int Looks)> sessions)
    {
        var looks = sessions.Select(s => s.Looks).Order().ToList();
        int At(double share) => looks[(int)(share * (looks.Count - 1))];
        var done = Milestones.Select(n => (sessions.Count(s => s.Right && s.Looks <= n) / (double)sessions.Count).ToString("F2", CultureInfo.InvariantCulture));
        var wrong = sessions.Count(s => !s.Right) / (double)sessions.Count;
        return output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {way} | {At(0.1)} | {At(0.5)} | {At(0.9)} | {wrong:P1} | {string.Join(" ", done)} |"));
    }
}
