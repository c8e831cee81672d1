using System.Text.RegularExpressions;
using System.Xml.Linq;
using LibraryDesk.Desk.Words;
using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Identification.Guides;
using LibraryDesk.TestServers;
using LibraryDesk.Web.Features.SeedLineage;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>The crop guides that come with the desk have their Spanish, all of it and nothing more.</summary>
public partial class GuideBookTests
{
    public static TheoryData<string> Ids => [.. BuiltInGuides.Ids];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_text_has_its_Spanish_and_none_stands_in_vain(string id)
    {
        var texts = Texts(Guide(id));
        var known = Spanish(id);
        var missing = texts.Except(known.Keys).Order(StringComparer.Ordinal).ToList();
        Assert.True(missing.Count == 0, "Without Spanish:\n" + string.Join('\n', missing));
        var idle = known.Keys.Except(texts).Order(StringComparer.Ordinal).ToList();
        Assert.True(idle.Count == 0, "In no guide:\n" + string.Join('\n', idle));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_guide_is_read_in_Spanish(string id)
    {
        using var _ = Languages.Speak("es");
        var known = Spanish(id);
        var written = CompiledGuide.Compile(Guide(id));
        var spanish = GuideBooks.Translate(written).Guide;
        Assert.Equal(known[written.Guide.Crop], spanish.Crop);
        Assert.Equal(written.Guide.Cautions.Select(c => known[c.Text]), spanish.Cautions.Select(c => c.Text));
        Assert.Equal(written.Guide.Traits.Select(t => known[t.Name]), spanish.Traits.Select(t => t.Name));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void What_is_told_apart_in_English_is_told_apart_in_Spanish(string id)
    {
        using var _ = Languages.Speak("es");
        var (english, spanish) = (Guide(id), GuideBooks.Translate(CompiledGuide.Compile(Guide(id))).Guide);
        AsDistinct(english.Traits.Select(t => t.Name), spanish.Traits.Select(t => t.Name));
        AsDistinct(english.Parts.Select(p => p.Name), spanish.Parts.Select(p => p.Name));
        foreach (var (trait, other) in english.Traits.Zip(spanish.Traits)) AsDistinct(trait.States.Select(s => s.Name), other.States.Select(s => s.Name));
        foreach (var (candidate, other) in english.Candidates.Zip(spanish.Candidates)) AsDistinct(candidate.Forms.Select(f => f.Name), other.Forms.Select(f => f.Name));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_translation_keeps_the_figures_and_the_species(string id)
    {
        var epithets = Guide(id).Candidates.Where(c => c.Kind == CandidateKind.Species).Select(c => c.Id.Split('-')[^1]).ToHashSet();
        foreach (var (english, spanish) in Spanish(id))
        {
            Assert.False(string.IsNullOrWhiteSpace(spanish), english);
            Assert.Equal(Figure().Matches(english).Select(m => m.Value), Figure().Matches(spanish).Select(m => m.Value));
            Assert.Equal(Named(english, epithets), Named(spanish, epithets));
        }
    }

    [Fact]
    public void An_edited_text_is_read_as_edited_and_the_rest_in_Spanish()
    {
        using var _ = Languages.Speak("es");
        var guide = Guide("phaseolus");
        var edited = guide with { Traits = [guide.Traits[0] with { Question = "Did the seedling lift its seed halves?" }, .. guide.Traits.Skip(1)] };
        var read = GuideBooks.Translate(CompiledGuide.Compile(edited)).Guide;
        Assert.Equal("Did the seedling lift its seed halves?", read.Traits[0].Question);
        Assert.Equal(Spanish("phaseolus")[guide.Traits[0].Name], read.Traits[0].Name);
        Assert.Equal(Spanish("phaseolus")[guide.Traits[1].Question], read.Traits[1].Question);
    }

    [Fact]
    public void English_and_a_guide_without_a_book_are_read_as_written()
    {
        var written = CompiledGuide.Compile(Guide("capsicum"));
        Assert.Same(written, GuideBooks.Translate(written));
        using var _ = Languages.Speak("es");
        var own = CompiledGuide.Compile(written.Guide with { Id = "own-crop" });
        Assert.Same(own, GuideBooks.Translate(own));
        Assert.NotSame(written, GuideBooks.Translate(written));
    }

    [Fact]
    public void Everyday_names_come_in_the_reader_s_language_and_scientific_ones_do_not()
    {
        Assert.Equal("runner bean", SpeciesNames.CommonOf("phaseolus-coccineus"));
        using var _ = Languages.Speak("es");
        Assert.Equal("judía escarlata, ayocote", SpeciesNames.CommonOf("phaseolus-coccineus"));
        Assert.Equal("Phaseolus coccineus", SpeciesNames.Of("phaseolus-coccineus"));
    }

    private static CropGuide Guide(string id) => BuiltInGuides.Open(id)!.Guide!;

    private static HashSet<string> Texts(CropGuide guide)
    {
        var texts = new HashSet<string>();
        _ = GuideTranslation.Of(guide, text =>
        {
            texts.Add(text);
            return text;
        });
        return texts;
    }

    private static Dictionary<string, string> Spanish(string id)
    {
        var file = Path.Combine(Repository.Root, "src", "LibraryDesk.Desk", "Words", "Guides", $"{char.ToUpperInvariant(id[0])}{id[1..]}Text.es.resx");
        return XDocument.Load(file, LoadOptions.PreserveWhitespace).Root!.Elements("data")
            .ToDictionary(line => line.Attribute("name")!.Value, line => line.Element("value")!.Value);
    }

    private static void AsDistinct(IEnumerable<string> english, IEnumerable<string> spanish) =>
        Assert.Equal(english.Distinct(StringComparer.OrdinalIgnoreCase).Count(), spanish.Distinct(StringComparer.OrdinalIgnoreCase).Count());

    private static IEnumerable<string> Named(string text, HashSet<string> epithets) =>
        Word().Matches(text).Select(m => m.Value.ToLowerInvariant()).Where(epithets.Contains).Distinct().Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\d+")]
    private static partial Regex Figure();

    [GeneratedRegex(@"\p{L}+")]
    private static partial Regex Word();
}
