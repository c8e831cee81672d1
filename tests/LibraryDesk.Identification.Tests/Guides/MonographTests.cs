using System.Globalization;
using CsvHelper;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>
/// The species descriptions of Barboza, Carrizo Garcia, Bianchetti, Romero and Scaldaferro 2022, PhytoKeys 200: 1-423, as single plants: every trait that a
/// treatment's Description scores is answered once. The guide was made from the same treatments, so this finds cells that were lost or drown each other,
/// not whether the monograph is right.
/// </summary>
public sealed class MonographTests
{
    private const string Table = "../capsicum-traits.csv";

    public static TheoryData<string> Taxa =>
    [
        "Capsicum annuum var. annuum", "Capsicum annuum var. glabriusculum", "Capsicum baccatum var. pendulum", "Capsicum baccatum var. umbilicatum",
        "Capsicum cardenasii", "Capsicum chacoense", "Capsicum chinense", "Capsicum eximium", "Capsicum flexuosum", "Capsicum frutescens",
        "Capsicum galapagoense", "Capsicum pubescens", "Capsicum rhomboideum",
    ];

    [SkippableTheory]
    [MemberData(nameof(Taxa))]
    public void The_plant_as_described_ranks_first_among_all_candidates(string taxon)
    {
        var first = Rank(Described(taxon).Select(t => AnswerOf(t.Key, t.MaxBy(Weight)!)))[0];

        Assert.Equal(IdOf(taxon), first.Id);
    }

    /// <summary>Single plants differ from the commonest state of everything: each listed alternative is taken in its turn.</summary>
    [SkippableTheory]
    [MemberData(nameof(Taxa))]
    public void The_plant_still_ranks_first_when_any_one_trait_is_as_its_description_rarely_allows(string taxon)
    {
        var traits = Described(taxon);
        foreach (var odd in traits)
        {
            foreach (var other in odd.Where(r => r.Often != "never"))
            {
                var first = Rank(traits.Select(t => AnswerOf(t.Key, t.Key == odd.Key ? other : t.MaxBy(Weight)!)))[0];
                Assert.True(first.Id == IdOf(taxon), $"{odd.Key} = {other.State}: {first.Id} at {first.Probability:F3}");
            }
        }
    }

    private static IReadOnlyList<RankedCandidate> Rank(IEnumerable<Answer> answers)
    {
        var check = Evidence.Check(PepperGuide.Compiled, [.. answers]);
        Assert.Empty(check.Faults);
        return Ranker.Rank(PepperGuide.Compiled, check.Evidence!, Prior.Flat).Candidates;
    }

    private static string IdOf(string taxon) => string.Join('-', taxon.Split(' ').Take(2)).ToLowerInvariant();

    private sealed record Row(string Trait, string State, string Often);

    private static List<IGrouping<string, Row>> Described(string taxon)
    {
        using var reader = CsvReader.FromFile(ReferenceData.Need(Table), new CsvReaderOptions { Separator = ',' });
        reader.ReadHeader();
        var rows = new List<Row>();
        while (reader.Read())
        {
            if (reader.GetString(0) != taxon || !reader.GetString(5).StartsWith("Barboza et al. 2022", StringComparison.Ordinal)) continue;
            if (!reader.GetString(5).EndsWith("Description", StringComparison.Ordinal)) continue;
            rows.Add(new Row(reader.GetString(1), reader.GetString(2), reader.GetString(3)));
        }

        Assert.NotEmpty(rows);
        return [.. rows.GroupBy(r => r.Trait).Where(t => t.Any(r => r.Often != "never"))];
    }

    private static int Weight(Row row) => Array.IndexOf(["never", "rarely", "sometimes", "usually", "always"], row.Often);

    private static Answer AnswerOf(string trait, Row row)
    {
        if (PepperGuide.Compiled.FindTrait(trait)!.Kind != TraitKind.Measured) return Answer.Of(trait, row.State);
        if (row.State.StartsWith(">=", StringComparison.Ordinal)) return Answer.Measured(trait, Number(row.State[2..]));
        if (row.State.StartsWith("<=", StringComparison.Ordinal)) return Answer.Measured(trait, Number(row.State[2..]));
        var ends = row.State.Split('-');
        return Answer.Measured(trait, ends.Length == 1 ? Number(ends[0]) : Math.Sqrt(Math.Max(0.1, Number(ends[0])) * Number(ends[1])));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
