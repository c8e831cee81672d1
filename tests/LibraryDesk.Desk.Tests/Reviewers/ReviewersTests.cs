using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Reviewers;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Reviewers;

public sealed class ReviewersTests
{
    [Theory, OnBoth]
    public async Task A_librarian_sees_everybody_and_a_volunteer_their_own_line(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var reviewers = scene.Library.Act<ReadReviewers>();
        var all = ReviewScene.Value(await reviewers.RunAsync(scene.Librarian, default));
        Assert.Equal(new HashSet<Guid> { scene.Wren.UserId!.Value, scene.Tam.UserId!.Value }, all.Lines.Select(l => l.Id).ToHashSet());
        Assert.Equal(1, all.PairedCases);
        var mine = ReviewScene.Value(await reviewers.RunAsync(scene.Wren, default));
        var line = Assert.Single(mine.Lines);
        Assert.True(line.IsMine && line.Name is null && line.SameAsDetermined == 1);
        Assert.Null(mine.Agreement);
        Assert.Equal(PeopleRefusals.MayNotCode, (await reviewers.RunAsync(scene.Owner, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task One_opinion_leaves_nearly_everything_open(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var line = ReviewScene.Value(await scene.Library.Act<ReadReviewers>().RunAsync(scene.Wren, default)).Lines[0];
        Assert.Equal(1, line.Reliability!.Votes);
        // By hand: five right and one wrong of a Beta(5, 1) law: its 2.5 % point is 0.025^(1/5) = 0.478.
        Assert.InRange(line.Reliability.Low, 0.47, 0.49);
    }

    [Theory, OnBoth]
    public async Task Opinions_on_cases_still_open_are_not_counted(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        Assert.Equal(0, ReviewScene.Value(await scene.Library.Act<ReadReviewers>().RunAsync(scene.Librarian, default)).Cases);
    }
}
