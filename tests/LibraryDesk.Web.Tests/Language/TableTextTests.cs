using System.Text.RegularExpressions;
using System.Xml.Linq;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Lineage.Names;
using LibraryDesk.TestServers;
using LibraryDesk.Web.Features.GuideEditor;
using LibraryDesk.Web.Features.Guides;
using LibraryDesk.Web.Features.Rates;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>Texts that the cores hold have their Spanish beside the page that shows them: the rates, and what the validator of guides finds.</summary>
public partial class TableTextTests
{
    private static readonly string[] Rules = ["GuideRules.cs", "GuideCellRules.cs"];
    private static readonly string[] Openings = ["Fault(", "fault(", "Unique("];

    [Fact]
    public void Every_rate_has_its_Spanish_and_none_stands_in_vain() =>
        Assert.Equal(RateTable.Standard.Rates.SelectMany(rate => new[] { rate.Meaning, rate.Source }).ToHashSet(), [.. Spanish("Rates", "RateTableText")]);

    [Fact]
    public void A_rate_is_told_in_Spanish()
    {
        using var _ = Languages.Speak("es");
        Assert.Equal("Lo mismo, con las flores embolsadas.", RateWords.Meaning(RateTable.Standard[RateTable.OutcrossBagged]));
        Assert.Equal("ajuste de la biblioteca", RateWords.Source(RateTable.Standard[RateTable.OutcrossBagged]));
    }

    [Fact]
    public void Every_fault_of_a_guide_has_its_Spanish_and_none_stands_in_vain()
    {
        var rules = Path.Combine(Repository.Root, "src", "LibraryDesk.Identification", "Guides");
        var found = Rules.Select(file => File.ReadAllText(Path.Combine(rules, file)))
            .SelectMany(source => Openings.SelectMany(opening => Ends(source, opening)).SelectMany(at => SpokenSentences.Literals(source, at)));
        Assert.Equal(found.Order(StringComparer.Ordinal).Distinct(), Spanish("GuideEditor", "FaultText").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_fault_and_the_words_within_it_are_told_in_Spanish()
    {
        var guide = BuiltInGuides.Open("capsicum")!.Guide!;
        var faulty = guide with { Sources = [.. guide.Sources, guide.Sources[0]], Candidates = [.. guide.Candidates.Select((c, i) => i == 0 ? c with { Prior = 0 } : c)] };
        using var _ = Languages.Speak("es");
        var told = GuideCheck.Of(faulty).Select(FaultWords.Of).ToList();
        Assert.Contains(told, words => words.StartsWith($"fuente «{guide.Sources[0].Id}»: ya está en la línea ", StringComparison.Ordinal));
        Assert.Contains($"la candidata «{guide.Candidates[0].Id}» necesita un porcentaje mayor que 0 y como máximo 1", told);
    }

    [Theory]
    [InlineData("from memory", "de memoria")]
    [InlineData("frequency word: mostly c. 1.8-2.5 cm", "palabra de frecuencia: mostly c. 1.8-2.5 cm")]
    [InlineData("what the word for the other state leaves open (20 in 100), spread evenly", "lo que dejan abierto las palabras de los otros estados (20 de 100), repartido por igual")]
    [InlineData("from memory; source: rarely, one part in three beside two pooled over the five domesticated species", "de memoria; la fuente: rara vez, una parte de cada tres junto a dos del conjunto de las cinco especies domesticadas")]
    [InlineData("acute ribs", "acute ribs")]
    public void How_a_source_was_read_is_told_in_Spanish_and_its_own_words_stay(string english, string spanish)
    {
        using (Languages.Speak("en")) Assert.Equal(english, BasisWords.Of(english));
        using var _ = Languages.Speak("es");
        Assert.Equal(spanish, BasisWords.Of(english));
    }

    [Fact]
    public void Every_entry_of_a_guide_that_can_differ_has_words()
    {
        var source = File.ReadAllText(Path.Combine(Repository.Root, "src", "LibraryDesk.Identification", "Editing", "GuideDifference.cs"));
        var words = File.ReadAllText(Path.Combine(Repository.Root, "src", "LibraryDesk.Web", "Features", "GuideEditor", "EditWords.cs"));
        var entries = Entry().Matches(source).Select(match => match.Groups["name"].Value).Distinct().ToList();
        Assert.Contains("reliability of answers", entries);
        Assert.All(entries, entry => Assert.Contains($"(_, \"{entry}\")", words, StringComparison.Ordinal));
    }

    private static IEnumerable<int> Ends(string source, string opening)
    {
        for (var at = source.IndexOf(opening, StringComparison.Ordinal); at >= 0; at = source.IndexOf(opening, at + 1, StringComparison.Ordinal)) yield return at + opening.Length;
    }

    private static IEnumerable<string> Spanish(string feature, string book) =>
        XDocument.Load(Path.Combine(Repository.Root, "src", "LibraryDesk.Web", "Features", feature, book + ".es.resx"), LoadOptions.PreserveWhitespace)
            .Root!.Elements("data").Select(line => line.Attribute("name")!.Value);

    [GeneratedRegex("\\(\"(?<name>[a-z][a-z ]*[a-z])\", ")]
    private static partial Regex Entry();
}
