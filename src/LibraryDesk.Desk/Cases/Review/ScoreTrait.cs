using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Keeps a volunteer's own score from the photos or the plant, beside the member's. A later one takes the place of the earlier.</summary>
public sealed class ScoreTrait(IDbContextFactory<LibraryDbContext> factory, SaveAnswer save)
{
    public async Task<Outcome<AnswerRow>> RunAsync(Actor actor, long caseId, long lookId, GivenAnswer score, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);

        if (row is null) return CaseRefusals.NotFound;
        if (ReviewRules.MayGiveOpinion(actor, row) is { } no) return no;

        return await save.SaveAsync(actor, caseId, lookId, score, stop);
    }
}
