using LibraryDesk.Identification.Guides;
using static LibraryDesk.Identification.Tests.Guides.PepperGuide;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>What growers hold of the five garden peppers. All of it: common practice, no source.</summary>
public sealed class PepperPracticeTests
{
    public static TheoryData<string> RipeColours => [.. Compiled.Guide.Traits.Single(t => t.Id == "fruit_colour_mature").States.Select(s => s.Id)];

    [Fact]
    public void At_least_24_traits_are_asked() => Assert.True(Compiled.Guide.Traits.Count(t => t.Asked) >= 24);

    [Fact]
    public void The_poisonous_look_alikes_are_in_the_guide() =>
        Assert.Superset(
            new HashSet<string> { "solanum-pseudocapsicum", "atropa-bella-donna", "solanum-nigrum", "solanum-dulcamara", "datura-stramonium" },
            Compiled.Guide.Candidates.Where(c => c.Kind == CandidateKind.LookAlike).Select(c => c.Id).ToHashSet());

    [Theory]
    [InlineData("yellow")]
    [InlineData("green-yellow")]
    [InlineData("green")]
    [InlineData("tan")]
    public void Spots_in_the_flower_point_to_baccatum(string colour) => Assert.Equal(Baccatum, First("corolla_spots=" + colour));

    [Fact]
    public void Black_seed_decides_for_pubescens()
    {
        var ranked = Rank("seed_colour=black");

        Assert.All(Domesticated.Where(s => s != Pubescens), other => Assert.True(ranked.Decibans(Pubescens, other) >= 20));
    }

    [Theory]
    [InlineData("dense")]
    [InlineData("intermediate")]
    public void Hairy_plants_with_purple_flowers_point_to_pubescens(string hairs) =>
        Assert.Equal(Pubescens, First($"stem_pubescence={hairs}; leaf_pubescence={hairs}; corolla_colour=purple"));

    [Fact]
    public void Purple_flowers_without_hairs_point_to_annuum_before_pubescens()
    {
        var ranked = Rank("stem_pubescence=absent; leaf_pubescence=absent; corolla_colour=purple");

        Assert.Equal(Annuum, ranked[0].Id);
        Assert.True(ranked.Decibans(Annuum, Pubescens) > 0);
    }

    [Fact]
    public void Purple_unripe_fruit_points_to_annuum_or_chinense() =>
        Assert.Equal([Annuum, Chinense], Rank("fruit_colour_immature=purple").Take(2).Select(c => c.Id).Order());

    [Fact]
    public void Upright_fruit_points_to_annuum_or_frutescens_but_never_strongly()
    {
        var ranked = Rank("fruit_position=erect");

        Assert.Equal([Annuum, Frutescens], ranked.Take(2).Select(c => c.Id).Order());
        Assert.All(Domesticated, other => Assert.True(ranked.Decibans(ranked[0].Id, other) < 10, other));
    }

    [Fact]
    public void Wrinkled_skin_leans_to_chinense() => Assert.Equal(Chinense, First("fruit_surface=wrinkled"));

    [Fact]
    public void A_marked_smell_leans_to_chinense() => Assert.Equal(Chinense, First("fruit_aroma=distinct"));

    [Theory]
    [MemberData(nameof(RipeColours))]
    public void Ripe_colour_hardly_parts_the_garden_species(string colour)
    {
        var ranked = Rank("fruit_colour_mature=" + colour);

        Assert.True(ranked.Decibans(ranked[0].Id, ranked[^1].Id) < 5);
    }
}
