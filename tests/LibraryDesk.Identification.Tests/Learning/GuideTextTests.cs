using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Learning;

public sealed class GuideTextTests
{
    [Fact]
    public void A_written_guide_reads_back_the_same()
    {
        foreach (var guide in new[] { SmallGuide.Read(SmallGuide.Json), BuiltInGuides.Open("capsicum")!.Guide! })
        {
            var text = GuideText.Write(guide);
            var again = GuideFile.Read(text);
            Assert.Empty(again.Faults);
            Assert.Equal(text, GuideText.Write(again.Guide!));
        }
    }

    [Fact]
    public void A_learned_guide_is_a_valid_guide_with_its_counts_apart()
    {
        List<LabelledCase> plants =
        [
            new("1", "Parva alba", [new("spots", "none"), new("leaf_mm", "22")]),
            new("2", "Parva alba", [new("spots", "none"), new("spots", "few")]),
            new("3", "Parva nigra", [new("spots", "many"), new("leaf_mm", "40")]),
        ];
        var guide = GuideLearner.Learn(plants, new LearnOptions("parva", "1", "Parva", Smoothing: 0.5, Temper: 1, DistinctForMeasured: 1));
        Assert.Empty(GuideFile.Read(GuideText.Write(guide)).Faults);
        Assert.Empty(guide.Cells);
        Assert.Equal(0.5, guide.Counts.Single(c => c.Of == "parva-alba" && c.State == "few").Count);
        Assert.Equal(Math.Log(22), guide.Counts.Single(c => c.Of == "parva-alba" && c.Trait == "leaf_mm").MeanLog!.Value, 12);
    }

    [Fact]
    public void Counts_of_determined_plants_are_added_to_the_published_words()
    {
        var guide = SmallGuide.Read(SmallGuide.Json);
        var more = guide with { Counts = [new CountRow("parva-nigra", "spots", "absent", 8, null, null, "determined", 0)] };
        var before = CompiledGuide.Compile(guide).Frequencies("parva-nigra", null, "spots")!;
        var after = CompiledGuide.Compile(more).Frequencies("parva-nigra", null, "spots")!;
        // A word is worth eight plants; eight more that show the other state make the two alike.
        Assert.Equal(0.002 / 1.002, before[0], 12);
        Assert.Equal((before[0] + 1) / 2, after[0], 12);
    }
}
