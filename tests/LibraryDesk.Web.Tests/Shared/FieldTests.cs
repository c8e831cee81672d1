using Bunit;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Tests.Shared;

public class FieldTests : BunitContext
{
    [Fact]
    public void A_refused_field_is_tied_to_its_hint_and_its_error_and_keeps_what_was_typed()
    {
        var page = Render<TextField>(p => p
            .Add(f => f.Id, "saved").Add(f => f.Label, "Saved from").Add(f => f.Value, "14")
            .Add(f => f.Hint, "Plants").Add(f => f.Error, "At most 12, the plants grown"));
        var input = page.Find("input");

        Assert.Equal("saved", page.Find("label").GetAttribute("for"));
        Assert.Equal("true", input.GetAttribute("aria-invalid"));
        Assert.Equal(
            ["Plants", "At most 12, the plants grown"],
            input.GetAttribute("aria-describedby")!.Split(' ').Select(id => page.Find($"#{id}").TextContent));
        Assert.Equal("14", input.GetAttribute("value"));
    }

    [Fact]
    public void A_field_in_order_claims_no_error()
    {
        var input = Render<TextField>(p => p.Add(f => f.Id, "grown").Add(f => f.Label, "Plants grown")).Find("input");

        Assert.False(input.HasAttribute("aria-invalid"));
        Assert.False(input.HasAttribute("aria-describedby"));
    }

    [Fact]
    public void The_summary_takes_focus_and_leads_to_the_field()
    {
        var page = Render<ErrorSummary>(p => p.Add(s => s.Faults, [new FormFault("saved", "You saved from more plants than you grew")]));
        var summary = page.Find("[role=alert]");

        Assert.Equal("-1", summary.GetAttribute("tabindex"));
        Assert.True(summary.HasAttribute("autofocus"));
        Assert.Equal("One answer needs a change", page.Find("h2").TextContent);
        Assert.EndsWith("#saved", page.Find("a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_faults_there_is_no_summary() =>
        Assert.Empty(Render<ErrorSummary>(p => p.Add(s => s.Faults, [])).FindAll("[role=alert]"));

    [Fact]
    public void A_drawn_answer_is_a_labelled_radio_button()
    {
        var page = Render<StateChoice>(p => p.Add(s => s.Name, "spots").Add(s => s.Value, "yes").Add(s => s.Label, "Yellow-green spots").Add(s => s.Chosen, true));
        var input = page.Find("label > input[type=radio]");

        Assert.Equal("yes", input.GetAttribute("value"));
        Assert.True(input.HasAttribute("checked"));
        Assert.Equal("Yellow-green spots", page.Find("label").TextContent.Trim());
    }

    [Fact]
    public void A_group_reads_its_error_with_its_question()
    {
        var page = Render<FieldGroup>(p => p
            .Add(g => g.Id, "apart").Add(g => g.Legend, "How was it kept apart?").Add(g => g.SingleChoice, true)
            .Add(g => g.Error, "Choose one.").AddChildContent("rows"));
        var group = page.Find("fieldset[role=radiogroup]");

        Assert.Equal("apart-error", group.GetAttribute("aria-describedby"));
        Assert.Equal("Choose one.", page.Find("#apart-error").TextContent);
    }
}
