using Bunit;
using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Tests.SeedPages;

public class BatchReadyTests : BunitContext
{
    [Fact]
    public void It_says_how_many_can_go_on_and_why_the_others_cannot()
    {
        var part = Render<BatchReady>(p => p.Add(b => b.Of, 40).Add(b => b.LeftOut, [("L26-999", new Refusal("x", "There is no lot L26-999."))]));
        Assert.Contains("39 of 40 are ready.", part.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Contains("L26-999: There is no lot L26-999.", part.Find(".note").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_all_can_go_on_nothing_is_left_out() =>
        Assert.Empty(Render<BatchReady>(p => p.Add(b => b.Of, 3).Add(b => b.LeftOut, [])).FindAll(".note"));
}
