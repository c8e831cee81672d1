using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// Contests an answer with one's own: a second answer to the same trait at the same look, and the odds move. Open only after the own
/// seal, since it is done with the odds in sight.
/// </summary>
public sealed class ContestAnswer(IDbContextFactory<LibraryDbContext> factory, SaveAnswer save)
{
    /// <param name="score">The contester's own score; trait and look are those of the contested answer.</param>
    public async Task<Outcome<AnswerRow>> RunAsync(Actor actor, long caseId, long answerId, GivenAnswer score, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null) return CaseRefusals.NotFound;
        var contested = await db.Set<AnswerRow>().AsNoTracking()
            .SingleOrDefaultAsync(a => a.Id == answerId && a.CaseId == caseId && a.TakenBackAt == null, stop);
        var hasSealed = await db.Set<OpinionRow>()
            .AnyAsync(o => o.CaseId == caseId && o.Round == row.Round && o.VolunteerId == actor.UserId, stop);

        if (ReviewRules.MayGiveOpinion(actor, row) is { } no) return no;
        if (!hasSealed) return ReviewRefusals.SealFirst;
        if (contested is null) return ReviewRefusals.NoSuchAnswer;
        if (contested.PersonId == actor.UserId) return ReviewRefusals.OwnAnswer;

        return await save.SaveAsync(actor, caseId, contested.LookId, score with { TraitId = contested.TraitId }, stop, contested.Id);
    }
}
