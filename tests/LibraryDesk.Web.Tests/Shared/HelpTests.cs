using Bunit;
using LibraryDesk.Web.Features.Help;
using LibraryDesk.Web.Features.Search;

namespace LibraryDesk.Web.Tests.Shared;

public sealed class HelpTests
{
    [Theory]
    [InlineData("overdue", "/help#overdue")]
    [InlineData("counter", "/help#counter")]
    [InlineData("stocktake", "/help#stocktake")]
    [InlineData("ledger", "/help#ledger")]
    public void A_librarians_word_leads_to_a_part_of_the_help_that_is_there(string asked, string place)
    {
        using var page = new BunitContext();
        Assert.Contains(HelpTopics.Find(asked), topic => topic.Address == place);
        Assert.NotEmpty(page.Render<LibrarianHelp>().FindAll(place["/help".Length..]));
    }
}
