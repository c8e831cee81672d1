using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>What every guide that ships must keep beyond the rules of the format.</summary>
public sealed class BuiltInGuideTests
{
    public static TheoryData<string> Ids => [.. BuiltInGuides.Ids];

    [Fact]
    public void Four_crops_ship() => Assert.Equal(["brassica", "capsicum", "cucurbita", "phaseolus"], BuiltInGuides.Ids);

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_guide_has_no_faults(string id) => Assert.Empty(BuiltInGuides.Open(id)!.Faults);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Priors_sum_to_one_and_there_is_something_else(string id)
    {
        var guide = Open(id);

        Assert.Equal(1, guide.Candidates.Sum(c => c.Prior), 9);
        Assert.Single(guide.Candidates, c => c.Kind == CandidateKind.SomethingElse);
        Assert.All(guide.Candidates, c => Assert.False(string.IsNullOrWhiteSpace(c.PriorBasis)));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_cell_says_how_it_was_read_and_where(string id)
    {
        var guide = Open(id);

        Assert.All(guide.Cells, c => Assert.False(string.IsNullOrWhiteSpace(c.Basis), $"line {c.Line}"));
        Assert.All(guide.Cells, c => Assert.NotNull(guide.FindSource(c.Source)));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void No_source_is_listed_for_nothing(string id)
    {
        var guide = Open(id);
        var used = guide.Cells.Select(c => c.Source)
            .Concat(guide.Traits.Select(t => t.Source).OfType<string>())
            .Concat(guide.Candidates.SelectMany(c => c.Sources))
            .Concat(guide.Cautions.SelectMany(c => c.Sources));

        Assert.Empty(guide.Sources.Select(s => s.Id).Except(used));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Nothing_that_is_asked_is_about_taste_heat_or_smell(string id)
    {
        var asked = Open(id).Traits.Where(t => t.Asked).ToList();

        Assert.DoesNotContain(asked, t => t.Id is "pungency" or "fruit_aroma");
        Assert.DoesNotContain(asked, t => Mentions(t.Question, "taste", "chew", "bite", "lick", "eat", "smell", "hot"));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_warning_against_tasting_belongs_to_every_candidate(string id) =>
        Assert.All(Open(id).Candidates, c => Assert.Contains("never-taste", c.Cautions));

    [Theory]
    [MemberData(nameof(Ids))]
    public void Each_look_alike_has_a_caution_of_its_own(string id)
    {
        var lookAlikes = Open(id).Candidates.Where(c => c.Kind == CandidateKind.LookAlike).ToList();

        Assert.NotEmpty(lookAlikes);
        Assert.All(lookAlikes, c => Assert.Contains(c.Cautions, caution => caution != "never-taste"));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void An_asked_trait_tells_how_to_look_and_what_it_tells(string id) =>
        Assert.All(Open(id).Traits.Where(t => t.Asked), t =>
        {
            Assert.EndsWith("?", t.Question, StringComparison.Ordinal);
            Assert.False(string.IsNullOrWhiteSpace(t.Hint));
            Assert.False(string.IsNullOrWhiteSpace(t.Why));
        });

    private static CropGuide Open(string id) => BuiltInGuides.Open(id)!.Guide!;

    private static bool Mentions(string text, params string[] words) =>
        text.Split([' ', ',', '.', '?', '!', ';', ':'], StringSplitOptions.RemoveEmptyEntries)
            .Any(word => words.Contains(word, StringComparer.OrdinalIgnoreCase));
}
