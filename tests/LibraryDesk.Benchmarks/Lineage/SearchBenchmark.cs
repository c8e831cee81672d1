using System.Diagnostics;
using System.Globalization;
using LibraryDesk.Data.Search;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Search;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>What people type into the search, each kind on its own and all together: the desk's search, as a librarian's, and the same in SQL by hand.</summary>
internal static class SearchBenchmark
{
    private const int QuestionsOfAKind = 60;
    private const int Most = 20;

    // Each question is put several times and the best counts: whatever else the machine does only adds.
    private const int Rounds = 3;

    /// <summary>Fills the search tables as <c>desk reindex</c> does, and says how long it took.</summary>
    public static async Task FillAsync(TextWriter output, BenchLibrary library)
    {
        var watch = Stopwatch.StartNew();
        var done = (await library.Act<RebuildSearch>().RunAsync(Actor.System, default)).Match(rebuilt => rebuilt, no => throw new InvalidOperationException(no.Message));
        await using var db = library.Open();
        await db.Database.ExecuteSqlRawAsync(db.Database.IsNpgsql() ? "VACUUM ANALYZE" : "ANALYZE");
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{library.Database}: reindex of {done.Lots} lots, {done.Names} names and {done.Words} words in {watch.Elapsed.TotalSeconds:F0} s."));
    }

    public static async Task RunAsync(TextWriter output, BenchLibrary library, LargeLibrary made)
    {
        await using var byHand = await HandWrittenSearch.OpenAsync(library);
        var act = library.Act<FindAnything>();
        List<double> allOurs = [], allByHand = [];
        foreach (var (kind, questions) in await QuestionsAsync(library, made))
        {
            var (ours, hand) = (new double[questions.Length], new double[questions.Length]);
            Array.Fill(ours, double.MaxValue);
            Array.Fill(hand, double.MaxValue);
            for (var round = 0; round < Rounds; round++)
            {
                for (var at = 0; at < questions.Length; at++)
                {
                    var start = Stopwatch.GetTimestamp();
                    var found = await act.RunAsync(Actor.System, questions[at], Most, default);
                    ours[at] = Math.Min(ours[at], Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                    start = Stopwatch.GetTimestamp();
                    var count = await AskByHandAsync(byHand, questions[at]);
                    hand[at] = Math.Min(hand[at], Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                    if (count != (CodeSearch.Beginning(questions[at]) is null ? found.Lots.Count + found.Accessions.Count : found.Lots.Count + found.Packets.Count + found.Accessions.Count)) throw new InvalidOperationException($"The two answers for '{questions[at]}' differ.");
                }
            }

            await RowAsync(output, library.Database, kind, ours, hand);
            allOurs.AddRange(ours);
            allByHand.AddRange(hand);
        }

        await RowAsync(output, library.Database, "all together", [.. allOurs], [.. allByHand]);
    }

    private static Task<int> AskByHandAsync(HandWrittenSearch search, string question)
    {
        if (CodeSearch.Beginning(question) is { } code) return search.ByCodeAsync(code, Most);
        var words = SearchText.Words(question);
        var year = words.Where(word => word.Length == 4 && word.All(char.IsAsciiDigit)).Select(word => (int?)int.Parse(word, CultureInfo.InvariantCulture)).FirstOrDefault();
        return search.ByWordsAsync(words.Where(word => word.Length != 4 || !word.All(char.IsAsciiDigit)), year, Most);
    }

    private static async Task<IReadOnlyList<(string Kind, string[] Questions)>> QuestionsAsync(BenchLibrary library, LargeLibrary made)
    {
        var random = new Random(12);
        await using var db = library.Open();
        var names = await db.Set<SearchNameRow>().AsNoTracking().Where(name => name.Display != "").OrderBy(name => name.Id).Select(name => name.Display).ToArrayAsync();
        var donors = await db.Set<Data.Seeds.DonorRow>().OrderBy(donor => donor.Id).Select(donor => donor.Name).ToArrayAsync();
        var traits = await db.Set<SearchPostingRow>().Where(row => row.Kind == SearchIndex.Names && row.Weight == NameWords.OfTrait).Select(row => row.Word).Distinct().OrderBy(word => word).ToArrayAsync();
        var (packets, lots) = (made.State.Packets.ToArray(), made.State.Lots.ToArray());
        string[] Ask(Func<string> question) => [.. Enumerable.Range(0, QuestionsOfAKind).Select(_ => question())];
        string Any(string[] of) => of[random.Next(of.Length)];
        string Season() => lots[random.Next(lots.Length)].MadeOn.Year.ToString(CultureInfo.InvariantCulture);
        return
        [
            ("the code of a packet", Ask(() => packets[random.Next(packets.Length)].Code.ToString())),
            ("the code of a lot", Ask(() => lots[random.Next(lots.Length)].Code.ToString())),
            ("the beginning of a code", Ask(() => packets[random.Next(packets.Length)].Code.ToString()[..6])),
            ("a name", Ask(() => Any(names))),
            ("a word of a name", Ask(() => Any(names).Split(' ')[random.Next(2)])),
            ("the beginning of a word", Ask(() => Any(names)[..4])),
            ("a name with a slip", Ask(() => Slip(Any(names), random))),
            ("a name and a season", Ask(() => $"{Any(names)} {Season()}")),
            ("a species and a season", Ask(() => $"chinense {Season()}")),
            ("a season", Ask(Season)),
            ("a species", ["pepper", "capsicum", "annuum", "chinense", "baccatum", "pubescens"]),
            ("a trait", Ask(() => Any(traits))),
            ("a donor", Ask(() => Any(donors))),
            ("a donor with a slip", Ask(() => Slip(Any(donors), random))),
            ("nothing there is", Ask(() => "xq" + Any(names).ToLowerInvariant()[..2] + "zzv")),
        ];
    }

    // One letter less, other, or two neighbours swapped, somewhere in the first word behind its first letter.
    private static string Slip(string name, Random random)
    {
        var letters = name.ToCharArray();
        var at = 1 + random.Next(name.IndexOf(' ', StringComparison.Ordinal) - 2);
        switch (random.Next(3))
        {
            case 0: return name.Remove(at, 1);
            case 1: letters[at] = letters[at] == 'x' ? 'q' : 'x'; break;
            default: (letters[at], letters[at + 1]) = (letters[at + 1], letters[at]); break;
        }

        return new(letters);
    }

    private static Task RowAsync(TextWriter output, string database, string kind, double[] ours, double[] hand) => output.WriteLineAsync(
        string.Create(CultureInfo.InvariantCulture, $"| {database}: {kind} | {ours.Length} | {At(ours, 0.5):F2} | {At(ours, 0.95):F2} | {At(hand, 0.5):F2} | {At(hand, 0.95):F2} | {At(ours, 0.95) / At(hand, 0.95):F2} |"));

    private static double At(double[] times, double part) => times.Order().ElementAt((int)Math.Ceiling(times.Length * part) - 1);
}
