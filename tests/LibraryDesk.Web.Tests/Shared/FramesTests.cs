using Bunit;
using LibraryDesk.Web.Shared.Frames;
using LibraryDesk.Web.Shared.Marks;

namespace LibraryDesk.Web.Tests.Shared;

public class FramesTests : BunitContext
{
    [Fact]
    public void Every_kind_of_chip_has_an_icon_and_a_word_of_its_own()
    {
        var words = Enum.GetValues<ChipKind>().Select(kind =>
        {
            var chip = Render<Chip>(p => p.Add(c => c.Kind, kind)).Find(".chip");
            Assert.NotNull(chip.QuerySelector("svg[aria-hidden=true]"));
            return chip.TextContent.Trim();
        }).ToList();

        Assert.DoesNotContain("", words);
        Assert.Equal(words.Count, words.Distinct().Count());
    }

    [Fact]
    public void Every_icon_is_drawn()
    {
        foreach (var name in Enum.GetValues<IconName>())
        {
            Assert.NotEmpty(Render<Icon>(p => p.Add(i => i.Name, name)).Find("svg").Children);
        }
    }

    [Fact]
    public void The_stage_of_now_is_the_current_step()
    {
        var now = Render<Stages>(p => p.Add(s => s.Stems, Stem.GrowthStages).Add(s => s.Now, 2)).Find("[aria-current=step]");

        Assert.Equal("Flowering", now.TextContent.Trim());
    }

    [Fact]
    public void Parts_say_in_words_whether_they_are_there()
    {
        var page = Render<PartsStems>(p => p.Add(s => s.Stems, [new Stem("Flowers", "stage-flowering", There: true), new Stem("Ripe fruit", "stage-ripe")]));

        Assert.Equal(["Flowers: there", "Ripe fruit: not there"], page.FindAll("li").Select(li => li.TextContent.Trim()));
    }

    [Fact]
    public void The_path_marks_what_is_done_and_where_it_stands()
    {
        var page = Render<StepPath>(p => p.Add(s => s.Steps, ["Filed", "Open", "Determined"]).Add(s => s.Now, 1));

        Assert.Equal(["Filed, done", "Open", "Determined"], page.FindAll("li").Select(li => li.TextContent.Trim()));
        Assert.Equal("Open", page.Find("[aria-current=step]").TextContent.Trim());
    }

    [Theory]
    [InlineData(1, 3, "1 2 3")]
    [InlineData(5, 9, "1 … 4 5 6 … 9")]
    [InlineData(9, 9, "1 … 8 9")]
    public void The_pager_shows_the_ends_and_the_neighbours(int page, int count, string shown)
    {
        var pager = Render<Pager>(p => p.Add(x => x.Page, page).Add(x => x.PageCount, count).Add(x => x.Address, n => $"/cases?page={n}"));
        var numbers = pager.FindAll("li").Where(li => li.QuerySelector("[rel]") is null).Select(li => li.TextContent.Trim().Replace("Page ", "", StringComparison.Ordinal));

        Assert.Equal(shown, string.Join(' ', numbers));
        Assert.Equal($"Page {page}", pager.Find("[aria-current=page]").TextContent);
    }

    [Fact]
    public void One_page_needs_no_pager() =>
        Assert.Empty(Render<Pager>(p => p.Add(x => x.Page, 1).Add(x => x.PageCount, 1).Add(x => x.Address, _ => "/cases")).FindAll("nav"));
}
