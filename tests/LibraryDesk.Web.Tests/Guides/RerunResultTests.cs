using Bunit;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Record;
using LibraryDesk.Web.Features.GuideEditor;

namespace LibraryDesk.Web.Tests.Guides;

public sealed class RerunResultTests : BunitContext
{
    [Fact]
    public void A_draft_that_does_worse_is_said_to_do_worse()
    {
        var note = Page(Run(0.9, 0.4)).Find(".note");
        Assert.Contains("does worse", note.TextContent, StringComparison.Ordinal);
        Assert.Contains("clash", note.ClassName, StringComparison.Ordinal);
    }

    [Fact]
    public void One_case_is_called_few_and_its_move_is_shown_with_its_number()
    {
        var page = Page(Run(0.4, 0.9));
        Assert.Contains("does better", page.Find(".note").TextContent, StringComparison.Ordinal);
        Assert.Contains("can be chance", page.Find(".note").TextContent, StringComparison.Ordinal);
        Assert.Equal("/cases/7", page.Find("#cases a").GetAttribute("href"));
        Assert.Contains("8.0 in 20", page.Find("#cases tbody").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_determined_cases_nothing_is_claimed()
    {
        var text = Page(new GuideRerun([], null, null, 0)).Markup;
        Assert.Contains("Nothing can be said", text, StringComparison.Ordinal);
        Assert.Contains("No case of this crop is determined yet", text, StringComparison.Ordinal);
    }

    private IRenderedComponent<RerunResult> Page(GuideRerun rerun) =>
        Render<RerunResult>(p => p.Add(r => r.GuideId, "capsicum").Add(r => r.Result, rerun).Add(r => r.Before, "2026.1"));

    private static GuideRerun Run(double before, double after)
    {
        static DeskRecord Record(double truth) => DeskRecord.Of([new JudgedForecast([truth, 1 - truth], 0)])!;
        static RerunReading Reading(double truth) => new("Capsicum annuum", Math.Max(truth, 1 - truth), truth, truth > 0.5);
        return new GuideRerun([new RerunLine("7", "capsicum-annuum", "Capsicum annuum", true, Reading(before), Reading(after))], Record(before), Record(after), 0);
    }
}
