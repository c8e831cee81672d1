using System.Xml.Linq;
using Bunit;
using LibraryDesk.Web.Shared.Drawings;

namespace LibraryDesk.Web.Tests.Shared;

public sealed class DrawingTests : BunitContext
{
    [Fact]
    public void A_drawing_with_a_label_is_an_image_with_that_name()
    {
        var drawing = Render<Drawing>(p => p.Add(d => d.Name, "corolla-spots").Add(d => d.Label, "Flower with \"spots\""));

        var svg = drawing.Find("svg.draw[role=img]");
        Assert.Equal("Flower with \"spots\"", svg.GetAttribute("aria-label"));
        Assert.Equal("currentColor", svg.GetAttribute("stroke"));
    }

    [Fact]
    public void A_drawing_without_a_label_is_hidden_from_assistive_technology()
    {
        var svg = Render<Drawing>(p => p.Add(d => d.Name, "corolla-plain")).Find("svg");

        Assert.Equal("true", svg.GetAttribute("aria-hidden"));
        Assert.Null(svg.GetAttribute("role"));
        Assert.Null(svg.GetAttribute("aria-label"));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("no-such-drawing")]
    public void An_unknown_drawing_shows_nothing(string? name) =>
        Assert.Equal("", Render<Drawing>(p => p.Add(d => d.Name, name)).Markup.Trim());

    [Fact]
    public void Every_drawing_is_well_formed_and_brings_no_inline_style_or_script()
    {
        Assert.NotEmpty(LineDrawings.Names);
        Assert.All(LineDrawings.Names, name =>
        {
            var svg = XElement.Parse(LineDrawings.Find(name)!);
            Assert.Equal("svg", svg.Name.LocalName);
            Assert.DoesNotContain(svg.DescendantsAndSelf(), e => e.Name.LocalName is "style" or "script" or "image" || e.Attribute("style") is not null);
            Assert.DoesNotContain(svg.DescendantsAndSelf().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        });
    }
}
