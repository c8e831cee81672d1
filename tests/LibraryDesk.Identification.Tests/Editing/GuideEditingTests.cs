using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Editing;

public sealed class GuideEditingTests
{
    private static readonly CropGuide Guide = SmallGuide.Compiled.Guide;

    private static readonly Cell Spots = Guide.Cells[0] with { Line = 0 };

    [Fact]
    public void Taking_a_trait_out_takes_its_figures_out()
    {
        var changed = new RemoveTrait("spots").Apply(Guide)!;
        Assert.DoesNotContain(changed.Cells, c => c.Trait == "spots");
        Assert.Empty(GuideCheck.Of(changed));
    }

    [Fact]
    public void Shares_still_sum_to_one_after_a_kind_is_changed_added_or_taken_out()
    {
        var alba = Guide.FindCandidate("parva-alba")! with { Prior = 0.2 };
        foreach (var edit in new GuideEdit[] { new PutCandidate(alba, true), new RemoveCandidate("parva-nigra") })
        {
            Assert.Equal(1, edit.Apply(Guide)!.Candidates.Sum(c => c.Prior), 12);
        }
    }

    [Fact]
    public void A_change_of_what_is_not_there_is_no_change()
    {
        Assert.Null(new RemoveSource("nobody").Apply(Guide));
        Assert.Null(new RemoveCell(Spots with { Source = "memory" }).Apply(Guide));
        Assert.Null(new PutCell(Spots with { Word = Word.Never }, Spots).Apply(Guide));
    }

    [Theory]
    [InlineData("spots", GuidePart.Trait)]
    [InlineData("beware", GuidePart.Caution)]
    [InlineData("parva-nigra", GuidePart.Candidate)]
    [InlineData("3", GuidePart.Cell)]
    public void A_fault_names_the_thing_it_stands_in(string id, GuidePart part)
    {
        var edited = part switch
        {
            GuidePart.Trait => new PutTrait(Guide.FindTrait("spots")! with { Part = "roots" }).Apply(Guide)!,
            GuidePart.Caution => new PutCaution(Guide.Cautions[0] with { Sources = [] }).Apply(Guide)!,
            GuidePart.Candidate => new PutCandidate(Guide.FindCandidate("parva-nigra")! with { Cautions = ["none"] }, false).Apply(Guide)!,
            _ => new PutCell(Guide.Cells[3], Guide.Cells[3] with { Source = "nobody" }).Apply(Guide)!,
        };
        var fault = Assert.Single(GuideCheck.Of(edited));
        Assert.Equal((part, id), (fault.Part, fault.Id));
    }

    [Fact]
    public void The_difference_names_exactly_what_was_changed()
    {
        var edited = new PutCell(Spots, Spots with { Word = Word.Rarely }).Apply(Guide)!;
        edited = new PutTrait(Guide.FindTrait("hairs")! with { Question = "How rough is it?" }).Apply(edited)!;
        var changes = GuideDifference.Between(Guide, edited).Changes;
        Assert.Equal(2, changes.Count);
        Assert.Contains(changes, c => c is { Part: GuidePart.Trait, Of: "hairs", What: "question", Was: "How hairy is it?", Is: "How rough is it?" });
        Assert.Contains(changes, c => c is { Part: GuidePart.Cell, Of: "parva-alba", Trait: "spots", What: "absent", Was: "usually [book]", Is: "rarely [book]" });
    }

    [Fact]
    public void How_reliable_answers_are_taken_to_be_is_part_of_the_difference()
    {
        var doubtful = Guide.FindTrait("spots")! with { Observer = new ObserverReliability(0.9, 0.8, 0.6) };
        var change = Assert.Single(GuideDifference.Between(Guide, new PutTrait(doubtful).Apply(Guide)!).Changes);
        Assert.Equal((GuidePart.Trait, "reliability of answers"), (change.Part, change.What));
        Assert.Equal(GuidePart.Whole, Assert.Single(GuideDifference.Between(Guide, Guide with { Temper = 0.8 }).Changes).Part);
    }

    [Fact]
    public void A_stage_takes_its_place_in_the_season_and_parts_follow()
    {
        var edited = new PutStage(new Stage("sprout", "Sprout"), null).Apply(Guide)!;
        edited = new PutPart(new Part("seed-leaves", "Seed leaves", "sprout")).Apply(edited)!;
        Assert.Equal(["sprout", "leafy", "flowering"], edited.Stages.Select(s => s.Id));
        Assert.Equal(["seed-leaves", "leaves", "flowers"], edited.Parts.Select(p => p.Id));
        Assert.Empty(GuideCheck.Of(edited));
        edited = new PutStage(new Stage("sprout", "Seedling"), "flowering").Apply(edited)!;
        Assert.Equal(["leaves", "flowers", "seed-leaves"], edited.Parts.Select(p => p.Id));
        Assert.Empty(GuideCheck.Of(edited));
        Assert.Null(new PutStage(new Stage("sprout", "Sprout"), "nowhere").Apply(Guide));
    }

    [Fact]
    public void What_still_names_a_stage_or_a_part_that_is_gone_is_a_fault_in_its_place()
    {
        var fault = Assert.Single(GuideCheck.Of(new RemoveStage("flowering").Apply(Guide)!));
        Assert.Equal((GuidePart.PlantPart, "flowers"), (fault.Part, fault.Id));
        Assert.All(GuideCheck.Of(new RemovePart("flowers").Apply(Guide)!), f => Assert.Equal(GuidePart.Trait, f.Part));
        Assert.Null(new RemovePart("roots").Apply(Guide));
    }

    [Fact]
    public void Another_stage_of_a_part_and_another_trust_in_answers_are_differences()
    {
        var moved = GuideDifference.Between(Guide, new PutPart(new Part("leaves", "Leaves", "flowering")).Apply(Guide)!).Changes;
        Assert.Contains(moved, c => c is { Part: GuidePart.PlantPart, Of: "leaves", What: "stage", Was: "leafy", Is: "flowering" });
        var whole = new PutWhole(Guide.Crop, Guide.Genus, new ObserverReliability(0.95, 0.8, 0.6), 1, 0.25);
        Assert.Equal(["form sharing", "reliability of answers"], GuideDifference.Between(Guide, whole.Apply(Guide)!).Changes.Select(c => c.What).Order());
    }

    [Fact]
    public void Nothing_differs_between_a_guide_and_its_own_text() =>
        Assert.True(GuideDifference.Between(Guide, GuideFile.Read(GuideText.Write(Guide)).Guide!).IsNone);

    [Theory]
    [InlineData("2026.1", "2026.1.1")]
    [InlineData("2026.1.1", "2026.1.3")]
    [InlineData("7", "7.1")]
    public void A_library_s_own_versions_are_numbered_after_the_one_they_come_from(string from, string next) =>
        Assert.Equal(next, GuideVersion.After(from, ["2026.1", "2026.1.2", from == "2026.1" ? "x" : "2026.1.1"]));
}
