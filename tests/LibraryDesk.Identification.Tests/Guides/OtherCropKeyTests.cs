using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>
/// Leads of published keys to squashes, beans and cabbages, with a flat prior among the species of each key. The guides were made from
/// the same descriptions, so these show that nothing was lost on the way, not that the guides are right.
/// </summary>
public sealed class OtherCropKeyTests
{
    [Theory]
    // OECD 2016, vol. 5, Cucurbita, table 2.3; Lu & Jeffrey 2011, Flora of China 19; Nesom 2015, Flora of North America 6.
    [InlineData("cucurbita", "peduncle_cross_section=round corky-streaked; peduncle_texture=soft", "cucurbita-maxima")]
    [InlineData("cucurbita", "peduncle_flare_at_fruit=strongly flared; calyx_lobes=leaf-like at the tip", "cucurbita-moschata")]
    [InlineData("cucurbita", "leaf_and_petiole_hairs=prickly spicules; leaf_lobing=deep", "cucurbita-pepo")]
    [InlineData("cucurbita", "seed_colour=dark brown to black; leaf_lobing=moderate, rounded", "cucurbita-ficifolia")]
    [InlineData("cucurbita", "peduncle_thickening=very thick corky club or ball; leaf_lobing=deep", "cucurbita-argyrosperma")]
    // Ali 1977, Flora of Pakistan 100; Brink 2006, PROTA 1; Acevedo-Rodriguez 2005.
    [InlineData("phaseolus", "flower_colour=scarlet; germination=hypogeal", "phaseolus-coccineus")]
    [InlineData("phaseolus", "bracteoles=small; pod_shape=oblong-falcate", "phaseolus-lunatus")]
    [InlineData("phaseolus", "bracteoles=conspicuous; flowers_per_inflorescence=few", "phaseolus-vulgaris")]
    [InlineData("phaseolus", "keel=not coiled; stipules=peltate, prolonged below the attachment", "vigna-unguiculata")]
    // Reznicek, Voss & Walters 2011, Michigan Flora Online; Webb, Sykes & Garnock-Jones 1988, Flora of New Zealand IV.
    [InlineData("brassica", "upper_leaves_clasping=clasping; bud_position=open flowers overtop buds", "brassica-rapa")]
    [InlineData("brassica", "upper_leaves_clasping=clasping; bud_position=buds level with or above open flowers; sepal_attitude=half-spreading to spreading", "brassica-napus")]
    [InlineData("brassica", "upper_leaves_clasping=clasping; sepal_attitude=erect; outer_stamens=erect", "brassica-oleracea")]
    [InlineData("brassica", "upper_leaves_clasping=not clasping; fruit_attitude=pressed to the axis", "brassica-nigra")]
    [InlineData("brassica", "upper_leaves_clasping=not clasping; fruit_cross_section=round, valves not keeled; bud_position=open flowers overtop buds", "brassica-juncea")]
    public void A_lead_of_a_key_leads_to_its_species(string guideId, string answers, string species)
    {
        var guide = CompiledGuide.Compile(BuiltInGuides.Open(guideId)!.Guide!);
        var check = Evidence.Check(guide, [.. answers.Split("; ").Select(a => a.Split('=')).Select(a => Answer.Of(a[0], a[1]))]);
        var among = guide.Guide.Candidates.Where(c => c.Kind == CandidateKind.Species).Select(c => c.Id).ToList();

        Assert.Empty(check.Faults);
        Assert.Equal(species, Ranker.Rank(guide, check.Evidence!, new Prior(IsFlat: true, Among: among)).Candidates[0].Id);
    }

    [Fact]
    public void A_marbled_seed_with_a_knob_is_castor_before_any_bean()
    {
        // From memory: castor seed is marbled and has a caruncle, no bean has one.
        var guide = CompiledGuide.Compile(BuiltInGuides.Open("phaseolus")!.Guide!);
        var evidence = Evidence.Check(guide, [Answer.Of("seed_knob", "knob"), Answer.Of("seed_colour", "mottled")]).Evidence!;

        Assert.Equal("ricinus-communis", Ranker.Rank(guide, evidence, Prior.OfGuide).Candidates[0].Id);
    }
}
