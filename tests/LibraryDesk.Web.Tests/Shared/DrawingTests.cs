using System.Xml.Linq;
using Bunit;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Marks;

namespace LibraryDesk.Web.Tests.Shared;

public sealed class DrawingTests : BunitContext
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
    public void Every_drawing_that_a_guide_names_is_there()
    {
        var guides = BuiltInGuides.Ids.Select(id => BuiltInGuides.Open(id)!.Guide!).ToList();
        var named = guides.SelectMany(g => g.Traits).SelectMany(t => t.States).Select(s => s.Drawing).OfType<string>().ToHashSet();

        Assert.NotEmpty(named);
        Assert.Empty(named.Except(DrawingShapes.Names));
    }
}
