using Bunit;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Tests.Shared;

public class OddsListTests : BunitContext
{
    private static readonly OddsLine[] Lines =
    [
        new("Capsicum baccatum", 17) { Share = 0.846 },
        new("Capsicum annuum", 2) { Share = 0.089 },
        new("Something else", 1) { Scientific = false, Share = 0.065 },
    ];

    [Fact]
    public void Each_candidate_has_its_name_its_words_and_its_picture()
    {
        var rows = Render<OddsList>(p => p.Add(l => l.Lines, Lines)).FindAll("ol > li");

        Assert.Equal(["17 in 20", "2 in 20", "1 in 20"], rows.Select(row => row.QuerySelector(".odds")!.TextContent));
        Assert.Equal(["17 in 20", "2 in 20", "1 in 20"], rows.Select(row => row.QuerySelector("[role=img]")!.GetAttribute("aria-label")));
    }

    [Fact]
    public void Latin_names_are_marked_as_Latin_and_plain_names_are_not()
    {
        var names = Render<OddsList>(p => p.Add(l => l.Lines, Lines)).FindAll("h3");

        Assert.Equal("la", names[0].QuerySelector("i")!.GetAttribute("lang"));
        Assert.Null(names[2].QuerySelector("i"));
    }

    [Fact]
    public void Exact_figures_wait_behind_a_disclosure_that_starts_closed()
    {
        var more = Render<OddsList>(p => p.Add(l => l.Lines, Lines)).Find("details");

        Assert.False(more.HasAttribute("open"));
        Assert.StartsWith("Exact figures", more.QuerySelector("summary")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("84.6\u00a0%", more.QuerySelector("td")!.TextContent);
    }

    [Fact]
    public void Without_shares_there_is_nothing_to_open() =>
        Assert.Empty(Render<OddsList>(p => p.Add(l => l.Lines, [new OddsLine("Capsicum annuum", 12)])).FindAll("details"));

    [Fact]
    public void Only_the_first_candidate_leads()
    {
        var rows = Render<OddsList>(p => p.Add(l => l.Lines, Lines)).FindAll("ol > li");

        Assert.Equal([true, false, false], rows.Select(row => row.QuerySelector(".seeds.green") is not null));
    }
}
