using LibraryDesk.Web.Features.Labels;

namespace LibraryDesk.Web.Tests.SeedPages;

public class LabelSheetTests
{
    public static TheoryData<string> Papers => ["a4", "letter"];

    [Theory, MemberData(nameof(Papers))]
    public void A_sheet_already_begun_starts_at_its_first_free_place(string paper)
    {
        var page = LabelSheet.Lay(LabelPaper.Of(paper), Codes(3), [], startAt: 5).Single();
        Assert.Equal([null, null, null, null, "1", "2", "3"], page.Labels);
    }

    [Theory, MemberData(nameof(Papers))]
    public void Every_label_and_every_stake_is_on_exactly_one_page(string paper)
    {
        var pages = LabelSheet.Lay(LabelPaper.Of(paper), Codes(40), Codes(31), startAt: 3);
        Assert.Equal(Codes(40), pages.SelectMany(page => page.Labels).OfType<string>());
        Assert.Equal(Codes(31), pages.SelectMany(page => page.Stakes));
    }

    [Theory, MemberData(nameof(Papers))]
    public void Nothing_runs_over_the_foot_of_a_page(string id)
    {
        var paper = LabelPaper.Of(id);
        foreach (var count in Enumerable.Range(1, 30))
        {
            foreach (var page in LabelSheet.Lay(paper, Codes(count), Codes(count), startAt: 1))
            {
                var rows = (page.Labels.Count + LabelPaper.Columns - 1) / LabelPaper.Columns;
                var used = (rows * paper.LabelHeight) + (page.Stakes.Count * LabelPaper.StakeHeight) + (rows > 0 && page.Stakes.Count > 0 ? LabelPaper.Gap : 0);
                Assert.True(paper.Top + used + paper.Foot <= paper.Height, $"{count}: {used}");
            }
        }
    }

    [Fact]
    public void Eight_labels_and_four_stakes_fit_on_one_page_of_either_paper()
    {
        Assert.Single(LabelSheet.Lay(LabelPaper.A4, Codes(8), Codes(4), 1));
        Assert.Single(LabelSheet.Lay(LabelPaper.Letter, Codes(8), Codes(4), 1));
    }

    private static string[] Codes(int count) => [.. Enumerable.Range(1, count).Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture))];
}
