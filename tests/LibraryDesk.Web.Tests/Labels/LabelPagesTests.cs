using LibraryDesk.Web.Features.Labels;

namespace LibraryDesk.Web.Tests.Labels;

public sealed class LabelPagesTests
{
    [Fact]
    public void Eight_labels_and_four_stakes_fit_one_plain_page()
    {
        var pages = LabelPages.Lay(LabelFormat.Of("a4-cut"), Named(8), Named(4), 1);

        var page = Assert.Single(pages);
        Assert.Equal(8, page.Labels.Count);
        Assert.Equal(4, page.Stakes.Count);
    }

    [Fact]
    public void A_sheet_already_begun_is_used_from_its_first_free_place()
    {
        var pages = LabelPages.Lay(LabelFormat.Of("a4-14"), Named(12), [], 5);

        Assert.Equal([null, null, null, null, "1"], pages[0].Labels.Take(5));
        Assert.Equal(14, pages[0].Labels.Count);
        Assert.Equal(["11", "12"], pages[1].Labels);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-3, 0)]
    [InlineData(15, 13)]
    public void A_start_off_the_sheet_counts_as_its_nearest_place(int startAt, int free) =>
        Assert.Equal(free, LabelPages.Lay(LabelFormat.Of("a4-14"), Named(1), [], startAt)[0].Labels.Count(label => label is null));

    [Fact]
    public void Sheets_that_come_cut_take_no_stakes() =>
        Assert.Empty(LabelPages.Lay(LabelFormat.Of("letter-10"), Named(1), Named(1), 1)[0].Stakes);

    [Fact]
    public void Nothing_chosen_makes_no_page() => Assert.Empty(LabelPages.Lay(LabelFormat.Of("a4-cut"), Named(0), Named(0), 3));

    // A4: ISO 216, 210 x 297 mm. US Letter: ANSI/ASME Y14.1 size A, 8.5 x 11 in.
    [Fact]
    public void Every_grid_lies_on_its_paper()
    {
        foreach (var format in LabelFormat.All)
        {
            var height = format.Top + (format.Rows * format.LabelHeight) + (format.Rows > 0 && format.Stakes > 0 ? LabelFormat.StakeGap : 0) + (format.Stakes * LabelFormat.StakeHeight);
            Assert.Equal(format.Paper == "A4" ? (210, 297) : (215.9, 279.4), (format.PageWidth, format.PageHeight));
            Assert.InRange(format.Left + format.BlockWidth, 0, format.PageWidth);
            Assert.InRange(height, 0, format.PageHeight - 8);
        }
    }

    private static string[] Named(int count) => [.. Enumerable.Range(1, count).Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))];
}
