using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Tests.Guides;

public sealed class GuideFileTests
{
    [Fact]
    public void A_good_guide_reads_without_faults()
    {
        var guide = SmallGuide.Read(SmallGuide.Json);
        Assert.Equal(4, guide.Candidates.Count);
        Assert.Equal(13, guide.Cells.Count);
    }

    [Theory]
    [InlineData("\"state\":\"present\",\"word\":\"always\"", "\"state\":\"striped\",\"word\":\"always\"", "spots", "does not have")]
    [InlineData("{\"of\":\"parva-nigra\",\"trait\":\"hairs\"", "{\"of\":\"parva-rubra\",\"trait\":\"hairs\"", "hairs", "no candidate")]
    [InlineData("\"state\":\"few\",\"word\":\"always\",\"source\":\"memory\"", "\"state\":\"few\",\"word\":\"always\",\"source\":\"rumour\"", "hairs", "not in \"sources\"")]
    [InlineData("\"low\":30,\"high\":60", "\"low\":60,\"high\":30", "leaf_mm", "upside down")]
    [InlineData("\"low\":30,\"high\":60", "\"low\":-3,\"high\":60", "leaf_mm", "negative")]
    [InlineData("\"state\":\"many\",\"word\":\"always\"", "\"state\":\"many\",\"word\":\"never\"", "hairs", "sum to nothing")]
    [InlineData("\"state\":\"present\",\"p\":0.9", "\"state\":\"present\",\"p\":1.9", "spots", "between 0 and 1")]
    [InlineData("\"state\":\"present\",\"p\":0.9", "\"state\":\"present\",\"p\":0.95", "spots", "more than 1")]
    [InlineData("\"prior\":0.3}", "\"prior\":0.4}", null, "sum to 1.1")]
    [InlineData("\"weight\":0.25", "\"weight\":0.35", null, "weights sum to 1.1")]
    [InlineData("\"weight\":0.25}", "\"weight\":0.25,\"from\":[\"parva-alba/giant\"]}", null, "does not exist")]
    [InlineData("\"cautions\":[\"beware\"]", "\"cautions\":[]", null, "names no caution")]
    [InlineData("\"id\":\"many\",\"name\"", "\"id\":\"few\",\"name\"", "hairs", "stands already")]
    [InlineData("\"kind\":\"measured\",\"unit\":\"mm\"", "\"kind\":\"measured\"", "leaf_mm", "no unit")]
    [InlineData("\"effort\":\"touch\",\"minutes\":1", "\"effort\":\"sniff\",\"minutes\":1", "hairs", "must be one of")]
    [InlineData("\"part\":\"flowers\",\"effort\":\"look\"", "\"part\":\"roots\",\"effort\":\"look\"", "spots", "not in \"parts\"")]
    [InlineData("\"stage\":\"flowering\"}", "\"stage\":\"autumn\"}", null, "not in \"stages\"")]
    [InlineData("\"word\":\"always\",\"source\":\"memory\"", "\"wrod\":\"always\",\"source\":\"memory\"", "hairs", "unknown entry")]
    [InlineData("\"domesticated\":true,", "\"domesticated\":\"yes\",", null, "true or false")]
    [InlineData("\"stages\": [ {\"id\":\"leafy\",\"name\":\"Leafy\"}", "\"stages\": [ {\"id\":\"flowering\",\"name\":\"Leafy\"}", null, "run in a circle")]
    [InlineData("\"stage\":\"leafy\"}", "\"stage\":\"flowering\"}, {\"id\":\"roots\",\"name\":\"Roots\",\"stage\":\"leafy\"}", null, "later stages")]
    [InlineData("\"word\":\"always\",\"source\":\"memory\"", "\"word\":\"always\"", "hairs", "has no \"source\"")]
    [InlineData("\"text\":\"Do not eat it.\",\"sources\":[\"book\"]", "\"text\":\"Do not eat it.\"", null, "names no source")]
    [InlineData("\"low\":30,\"high\":60", "\"low\":30,\"high\":1e999", "leaf_mm", "must be a number")]
    [InlineData("\"kind\":\"ordered\",\"variesWithinPlant\":true", "\"kind\":\"ordered\",\"observer\":{\"sure\":1.2,\"fairly\":0.9,\"faint\":0.7}", "hairs", "above 0 and at most 1")]
    [InlineData("\"weight\":0.25}", "\"weight\":0.25,\"from\":[\"parva-alba/dwarf\"]}", null, "takes cells from itself")]
    public void Each_fault_names_its_line_and_trait(string right, string wrong, string? trait, string reason)
    {
        var json = SmallGuide.Json.Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(SmallGuide.Json, json);
        var faults = SmallGuide.Faults(json);
        var changed = json.Split('\n').Zip(SmallGuide.Json.Split('\n')).Select((pair, i) => (pair, i)).First(x => x.pair.First != x.pair.Second).i + 1;
        Assert.Contains(faults, f => f.Reason.Contains(reason, StringComparison.Ordinal) && f.Trait == trait && Math.Abs(f.Line - changed) <= AllowedDistance(reason));
    }

    [Fact]
    public void Every_fault_is_reported_not_only_the_first()
    {
        var json = SmallGuide.Json.Replace("\"low\":30,\"high\":60", "\"low\":60,\"high\":30", StringComparison.Ordinal)
            .Replace("\"state\":\"sweet\",\"word\"", "\"state\":\"sour\",\"word\"", StringComparison.Ordinal);
        Assert.Equal(2, SmallGuide.Faults(json).Count);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("{\n\"format\": 1,\n\"id\": }", 3)]
    [InlineData("[]", 1)]
    [InlineData("{\"format\": 1} 5", 1)]
    public void Text_that_is_no_guide_is_a_fault_and_not_an_exception(string json, int line) =>
        Assert.Contains(SmallGuide.Faults(json), f => f.Line == line);

    [Fact]
    public void A_guide_of_another_format_is_refused() =>
        Assert.Contains(SmallGuide.Faults(SmallGuide.Json.Replace("\"format\": 1", "\"format\": 2", StringComparison.Ordinal)), f => f.Line == 2);

    [Fact]
    public void Every_built_in_guide_is_without_faults()
    {
        foreach (var id in BuiltInGuides.Ids) Assert.Empty(BuiltInGuides.Open(id)!.Faults);
    }

    [Fact]
    public void An_unknown_built_in_guide_is_null() => Assert.Null(BuiltInGuides.Open("no-such-crop"));

    // Sums are reported at the first row of the list they are sums of; all others exactly at the changed line.
    private static int AllowedDistance(string reason) => reason switch
    {
        "sum to 1.1" => 3,
        "weights sum to 1.1" => 2,
        _ => 0,
    };
}
