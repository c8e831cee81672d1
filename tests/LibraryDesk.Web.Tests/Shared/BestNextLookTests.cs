using Bunit;
using LibraryDesk.Web.Shared.Frames;
using LibraryDesk.Web.Shared.Odds;

namespace LibraryDesk.Web.Tests.Shared;

public class BestNextLookTests : BunitContext
{
    [Theory]
    [InlineData(LookEffort.Look, 1, "Look only, 1 minute")]
    [InlineData(LookEffort.Touch, 2, "Touch it, 2 minutes")]
    [InlineData(LookEffort.CutOpen, null, "Cut one open")]
    public void The_effort_is_said_in_words(LookEffort effort, int? minutes, string words)
    {
        var page = Render<BestNextLook>(p => p.Add(n => n.Question, "What colour are the anthers?").Add(n => n.Effort, effort).Add(n => n.Minutes, minutes));

        Assert.Equal(words, page.Find(".effort").TextContent);
    }

    [Fact]
    public void A_caution_stands_before_the_question_it_guards()
    {
        var page = Render<BestNextLook>(p => p
            .Add(n => n.Question, "Cut a fruit: what colour are the seeds?")
            .Add(n => n.Effort, LookEffort.CutOpen)
            .Add<Caution>(n => n.Caution, c => c.Add(x => x.Heading, "Gloves on").Add(x => x.Level, 3).AddChildContent("Hot fruit burns.")));

        Assert.Equal(["Gloves on", "Cut a fruit: what colour are the seeds?"], page.FindAll("h3").Select(h => h.TextContent));
    }

    [Fact]
    public void What_an_answer_would_do_never_promises_certainty()
    {
        var page = Render<ThenTable>(p => p.Add(t => t.Lines, [new ThenLine("yellow", "Capsicum baccatum", 20)]));

        Assert.Equal("more than 19 in 20", page.Find(".odds").TextContent);
    }
}
