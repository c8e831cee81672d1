using Bunit;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Tests.Shared;

public class EvidenceLedgerTests : BunitContext
{
    [Fact]
    public void The_sides_are_told_apart_in_words_not_only_in_colour()
    {
        var page = Render<EvidenceLedger>(p => p
            .Add(l => l.Candidate, "Capsicum baccatum")
            .Add(l => l.For, [new EvidenceLine("Spots in the flower", TallyWeight.Decides)])
            .Add(l => l.Against, [new EvidenceLine("Stalk hanging", TallyWeight.Some)]));

        Assert.Equal(["Speaks for Capsicum baccatum", "Speaks against"], page.FindAll("caption").Select(c => c.TextContent.Trim()));
        Assert.Equal(["decides", "some"], page.FindAll(".tally").Select(t => t.TextContent.Trim()));
    }

    [Fact]
    public void A_line_with_facts_opens_to_them()
    {
        var line = new EvidenceLine("Spots in the flower", TallyWeight.Strong) { Facts = [new Fact("Weight", "9.1 decibans")] };
        var page = Render<EvidenceTable>(p => p.Add(t => t.Lines, [line]).Add(t => t.Caption, "Speaks for it"));

        Assert.Equal("Weight", page.Find("details dt").TextContent);
        Assert.Equal("9.1 decibans", page.Find("details dd").TextContent);
    }

    [Fact]
    public void An_empty_side_says_so()
    {
        var page = Render<EvidenceTable>(p => p.Add(t => t.Lines, []).Add(t => t.Caption, "Speaks against"));

        Assert.Equal("Nothing so far.", page.Find("td").TextContent.Trim());
    }
}
