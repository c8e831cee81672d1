using Bunit;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Record;
using LibraryDesk.Desk.Reviewers;
using LibraryDesk.Identification.Editing;
using LibraryDesk.TestServers;
using LibraryDesk.Web.Features.GuideEditor;
using LibraryDesk.Web.Features.Guides;
using LibraryDesk.Web.Features.Record;
using LibraryDesk.Web.Features.Reviewers;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Web.Tests.Guides;

/// <summary>Pages of guides and record over a real, empty library.</summary>
public sealed class GuidePagesTests : BunitContext, IAsyncLifetime
{
    private static readonly Actor Hester = Actor.Librarian(Guid.NewGuid());

    private TestLibrary _library = null!;

    public async Task InitializeAsync()
    {
        _library = await TestLibrary.CreateAsync("sqlite");
        Services.AddSingleton(_library.Act<ReadVersions>());
        Services.AddSingleton(_library.Act<GuideShelf>());
        Services.AddSingleton(_library.Act<ReadRecord>());
        Services.AddSingleton(_library.Act<ReadReviewers>());
        Services.AddScoped<CurrentActor>();
        this.AddAuthorization();
    }

    async Task IAsyncLifetime.DisposeAsync() => await _library.DisposeAsync();

    [Fact]
    public async Task Every_figure_of_a_kind_leads_to_its_source()
    {
        var guide = (await _library.Act<GuideShelf>().CurrentAsync("capsicum", default))!.Guide;
        var page = Render<CandidatePage>(p => p.Add(c => c.GuideId, "capsicum").Add(c => c.CandidateId, "capsicum-baccatum"));
        page.WaitForElement("h1");
        var cells = guide.Cells.Where(c => c.Of.Split('/')[0] == "capsicum-baccatum").ToList();
        var links = page.FindAll(".plainlist a").Select(a => a.GetAttribute("href")).ToList();
        Assert.True(cells.Count > 50);
        Assert.Equal(cells.Select(c => "/guides/capsicum#source-" + c.Source).Order(), links.Order());
        var sources = Render<GuidePage>(p => p.Add(g => g.GuideId, "capsicum"));
        sources.WaitForElement("h1");
        var anchors = sources.FindAll(".sources li").Select(li => "/guides/capsicum#" + li.Id).ToHashSet();
        Assert.All(links, link => Assert.Contains(link!, anchors));
    }

    [Fact]
    public void A_desk_without_determined_cases_claims_nothing()
    {
        var page = Render<RecordPage>();
        page.WaitForElement("h1");
        Assert.Contains("Nothing to judge yet", page.Markup, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("svg.plot"));
    }

    [Fact]
    public void A_visitor_is_told_why_the_reviewers_are_not_shown()
    {
        var page = Render<ReviewersPage>();
        page.WaitForElement("h1");
        Assert.Empty(page.FindAll("table"));
    }

    [Fact]
    public async Task Whoever_was_slower_sees_what_the_other_changed()
    {
        var begin = await _library.Act<BeginDraft>().RunAsync(Hester, "capsicum", null, default);
        Assert.Null(begin.Refusal);
        var draft = (await _library.Act<ReadDraft>().RunAsync(Hester, "capsicum", default)).Match(d => d, _ => null!);
        await _library.Act<ChangeDraft>().RunAsync(Hester, "capsicum", draft.Revision, new PutTrait(draft.Guide.Traits[0] with { Hint = "Look twice." }), default);
        draft = (await _library.Act<ReadDraft>().RunAsync(Hester, "capsicum", default)).Match(d => d, _ => null!);
        var frame = Render<EditorFrame>(p => p
            .Add(f => f.GuideId, "capsicum").Add(f => f.Heading, "Change a figure").Add(f => f.Draft, draft).Add(f => f.No, null)
            .Add(f => f.Faults, [new FormFault(null, GuideRefusals.ChangedMeanwhile.Message)]).Add(f => f.ChildContent, _ => "<p>form</p>"));
        Assert.Contains(draft.Guide.Traits[0].Name, frame.Find(".note").TextContent, StringComparison.Ordinal);
    }
}
