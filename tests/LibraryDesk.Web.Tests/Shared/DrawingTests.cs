using System.Text.RegularExpressions;
using System.Xml.Linq;
using Bunit;
using LibraryDesk.Identification.Guides;
using LibraryDesk.TestServers;
using LibraryDesk.Web.Shared.Marks;

namespace LibraryDesk.Web.Tests.Shared;

public sealed partial class DrawingTests : BunitContext
{
    [Fact]
    public void A_drawing_with_a_label_is_an_image_with_that_name()
    {
        var svg = Render<Drawing>(p => p.Add(d => d.Name, "corolla-spots").Add(d => d.Label, "Flower with \"spots\"")).Find("svg.draw[role=img]");

        Assert.Equal("Flower with \"spots\"", svg.GetAttribute("aria-label"));
        Assert.Equal("currentColor", svg.GetAttribute("stroke"));
    }

    [Fact]
    public void A_drawing_without_a_label_is_hidden_from_assistive_technology()
    {
        var svg = Render<Drawing>(p => p.Add(d => d.Name, "corolla-plain")).Find("svg");

        Assert.Equal("true", svg.GetAttribute("aria-hidden"));
        Assert.Null(svg.GetAttribute("role"));
    }

    [Fact]
    public void An_unknown_drawing_shows_nothing() =>
        Assert.Equal("", Render<Drawing>(p => p.Add(d => d.Name, "no-such-drawing")).Markup.Trim());

    // An unknown name draws nothing, so that a slip in a page would not be seen.
    [Fact]
    public void Every_drawing_that_a_page_names_is_there()
    {
        var sources = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "LibraryDesk.Web", "Features"), "*", SearchOption.AllDirectories).Where(file => Path.GetExtension(file) is ".razor" or ".cs");
        var named = sources.SelectMany(file => NamedDrawing().Matches(File.ReadAllText(file))).Select(match => match.Groups["name"].Value).ToHashSet();
        Assert.Contains("plant-with-empty-label", named);
        Assert.Empty(named.Except(DrawingShapes.Names));
    }

    [Fact]
    public void No_drawing_brings_inline_style_or_script()
    {
        Assert.NotEmpty(DrawingShapes.Names);
        Assert.All(DrawingShapes.Names, name =>
        {
            var all = XElement.Parse("<g>" + DrawingShapes.Find(name)!.Markup + "</g>").DescendantsAndSelf().ToList();
            Assert.DoesNotContain(all, e => e.Name.LocalName is "style" or "script" or "image" || e.Attribute("style") is not null);
            Assert.DoesNotContain(all.Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void Every_state_of_every_trait_is_drawn_and_no_two_of_a_trait_alike()
    {
        var guides = BuiltInGuides.Ids.Select(id => BuiltInGuides.Open(id)!.Guide!).ToList();
        var traits = guides.SelectMany(g => g.Traits.Where(t => t.States.Count > 0).Select(t => (Guide: g.Id, Trait: t))).ToList();

        Assert.NotEmpty(traits);
        Assert.Empty(traits.SelectMany(t => t.Trait.States.Where(s => s.Drawing is null).Select(s => $"{t.Guide}: {t.Trait.Id}: {s.Id}")));
        Assert.Empty(traits.Where(t => t.Trait.States.Select(s => DrawingShapes.Find(s.Drawing!)?.Markup).Distinct().Count() < t.Trait.States.Count).Select(t => $"{t.Guide}: {t.Trait.Id}"));
    }

    [Fact]
    public void Every_stage_and_part_of_a_crop_has_a_drawing_of_its_own()
    {
        // Peppers are what the shared drawings show.
        var others = BuiltInGuides.Ids.Where(id => id != "capsicum").Select(id => BuiltInGuides.Open(id)!.Guide!);

        Assert.All(others, guide =>
        {
            Assert.All(guide.Parts, part => Assert.Contains($"part-{guide.Id}-{part.Id}", DrawingShapes.Names));
            Assert.All(guide.Stages.Where(stage => stage.Id != "seedling"), stage => Assert.Contains($"stage-{guide.Id}-{stage.Id}", DrawingShapes.Names));
        });
    }

    [Fact]
    public void Every_drawing_that_a_guide_names_is_there()
    {
        var guides = BuiltInGuides.Ids.Select(id => BuiltInGuides.Open(id)!.Guide!).ToList();
        var named = guides.SelectMany(g => g.Traits).SelectMany(t => t.States).Select(s => s.Drawing).OfType<string>().ToHashSet();

        Assert.NotEmpty(named);
        Assert.Empty(named.Except(DrawingShapes.Names));
    }

    [GeneratedRegex("(Drawing(Name| Name)=)?\"(?<name>(slot|stage|part|plant|seeds?)-[a-z-]+)\"|Drawing(Name| Name)=\"(?<name>[a-z][a-z-]+)\"")]
    private static partial Regex NamedDrawing();
}
