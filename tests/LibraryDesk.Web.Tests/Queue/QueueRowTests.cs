using Bunit;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Web.Features.Queue;

namespace LibraryDesk.Web.Tests.Queue;

public sealed class QueueRowTests : BunitContext
{
    private static readonly QueueLine Line = new(
        214, "Pepper in an unmarked pot", CaseState.Open, ["leaves", "flowers"], ["Leaves", "Flowers"], 2, 5, null, 9, 1, 2, MyPart.NotYet, 0, false);

    [Fact]
    public void It_says_what_the_plant_carries_how_long_it_waits_and_which_opinion_is_wanted()
    {
        var text = RowOf(Line);
        Assert.Contains("Leaves, Flowers", text, StringComparison.Ordinal);
        Assert.Contains("2 looks, 5 photos", text, StringComparison.Ordinal);
        Assert.Contains("waiting 9 days", text, StringComparison.Ordinal);
        Assert.Contains("Second opinion", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_I_began_is_named_as_that() =>
        Assert.Contains("Finish your review", RowOf(Line with { Mine = MyPart.InReview }), StringComparison.Ordinal);

    [Fact]
    public void A_look_asked_for_is_said() =>
        Assert.Contains("1 look asked of the member", RowOf(Line with { LooksAsked = 1, State = CaseState.WaitingForLook }), StringComparison.Ordinal);

    private string RowOf(QueueLine line) => Render<QueueRow>(row => row.Add(r => r.Line, line)).Find("li").TextContent;
}
