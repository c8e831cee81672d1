using Bunit;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Tests.Shared;

public class SeedsTests : BunitContext
{
    [Fact]
    public void Seventeen_seeds_are_one_picture_that_reads_17_in_20()
    {
        var picture = Render<Seeds>(p => p.Add(s => s.InTwenty, 17)).Find("[role=img]");

        Assert.Equal("17 in 20", picture.GetAttribute("aria-label"));
        Assert.Equal((17, 3), Counted(picture));
    }

    [Fact]
    public void Twenty_is_never_claimed_while_the_case_is_undetermined()
    {
        var picture = Render<Seeds>(p => p.Add(s => s.InTwenty, 20)).Find("[role=img]");

        Assert.Equal("more than 19 in 20", picture.GetAttribute("aria-label"));
        Assert.Equal((19, 1), Counted(picture));
    }

    [Fact]
    public void A_determined_case_may_fill_all_twenty()
    {
        var picture = Render<Seeds>(p => p.Add(s => s.InTwenty, 20).Add(s => s.Determined, true)).Find("[role=img]");

        Assert.Equal("20 in 20", picture.GetAttribute("aria-label"));
        Assert.Equal((20, 0), Counted(picture));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void Less_than_half_a_seed_fills_none_and_says_under_1_in_20(int inTwenty)
    {
        var picture = Render<Seeds>(p => p.Add(s => s.InTwenty, inTwenty)).Find("[role=img]");

        Assert.Equal("under 1 in 20", picture.GetAttribute("aria-label"));
        Assert.Equal((0, 20), Counted(picture));
    }

    [Fact]
    public void Only_the_leading_candidate_is_green()
    {
        Assert.Contains("green", Render<Seeds>(p => p.Add(s => s.InTwenty, 9).Add(s => s.Lead, true)).Find("[role=img]").ClassList);
        Assert.DoesNotContain("green", Render<Seeds>(p => p.Add(s => s.InTwenty, 9)).Find("[role=img]").ClassList);
    }

    // Each seed starts with one move of the pen.
    private static (int Filled, int Open) Counted(AngleSharp.Dom.IElement picture)
    {
        int Of(string selector) => picture.QuerySelector(selector)?.GetAttribute("d")!.Count(letter => letter == 'M') ?? 0;
        return (Of("path.f"), Of("path:not(.f)"));
    }
}
