using Bunit;
using LibraryDesk.Desk.Words;
using LibraryDesk.Web.Shared.Language;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Tests.Language;

public class LinkedTextTests : BunitContext
{
    private static readonly WordBook Words = new(typeof(LinkedTextTests));

    [Fact]
    public void Links_and_strong_words_are_drawn_and_values_encoded()
    {
        var drawn = Render(Words.Linked($"**Now** open [lot {"<b>7</b>"}](/lots/{7}) or wait.")).Markup;
        Assert.Equal("<b>Now</b> open <a href=\"/lots/7\">lot &lt;b&gt;7&lt;/b&gt;</a> or wait.", drawn);
    }

    [Fact]
    public void A_typed_value_never_becomes_a_link_and_no_link_leads_away()
    {
        var (typed, away) = (string.Concat("[me]", "(/account)"), new Uri("https://elsewhere.example").OriginalString[6..]);
        var drawn = Render(Words.Linked($"By {typed}, see [there]({away}).")).Markup;
        Assert.Equal("By [me](/account), see <a href=\"/\">there</a>.", drawn);
    }

    [Fact]
    public void A_part_drawn_by_a_component_stands_in_its_place()
    {
        RenderFragment latin = builder => builder.AddMarkupContent(0, "<i>Capsicum</i>");
        var drawn = Render(Words.Linked($"{3} speak for {latin}, **{"two"}** against `{"Q"}`.")).Markup;
        Assert.Equal("3 speak for <i>Capsicum</i>, <b>two</b> against <span class=\"code\">Q</span>.", drawn);
    }
}
