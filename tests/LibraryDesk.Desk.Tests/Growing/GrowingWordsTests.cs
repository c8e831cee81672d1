using System.Xml.Linq;
using LibraryDesk.Desk.Growing;
using LibraryDesk.Desk.Words;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Growing;

public sealed class GrowingWordsTests
{
    [Fact]
    public void Every_text_of_the_file_has_its_Spanish_and_no_Spanish_is_left_over()
    {
        var lines = XDocument.Load(Path.Combine(Repository.Root, "src", "LibraryDesk.Desk", "Growing", "GrowingFileText.es.resx")).Root!
            .Elements("data").ToDictionary(line => line.Attribute("name")!.Value, line => line.Element("value")!.Value);
        var texts = GrowingFacts.All.Select(fact => fact.Statement).OfType<string>()
            .Concat(GrowingFacts.All.Select(fact => fact.Taxon).Distinct().SelectMany(GrowingFacts.For).SelectMany(topic => new[] { topic.Name, topic.Group })).ToHashSet();

        Assert.Empty(texts.Except(lines.Keys));
        Assert.Empty(lines.Keys.Except(texts));
        Assert.DoesNotContain(lines.Values, string.IsNullOrWhiteSpace);
    }

    [Fact]
    public void Figures_units_and_names_follow_the_reader()
    {
        using var _ = Languages.Speak("es");
        var ripe = GrowingFacts.For("capsicum-pubescens", "days_transplant_to_ripe")!;

        Assert.Equal("Días del trasplante al fruto maduro", ripe.Name);
        Assert.Equal("de 120 a 180 días", Assert.Single(ripe.Facts).Figure);
        Assert.Equal("bienal", GrowingFacts.All.First(fact => fact.Term == "biennial").Figure);
    }

    // A number that got lost or changed in a translation would be a wrong figure with a good source.
    [Fact]
    public void A_translated_statement_keeps_every_number()
    {
        using var _ = Languages.Speak("es");
        Assert.All(GrowingFacts.All.Where(fact => fact.Statement is not null), fact =>
            Assert.Equal(Digits(fact.Statement!), Digits(GrowingWords.Statement(fact)!)));
    }

    private static string Digits(string text) => string.Concat(text.Where(char.IsAsciiDigit).Order());
}
