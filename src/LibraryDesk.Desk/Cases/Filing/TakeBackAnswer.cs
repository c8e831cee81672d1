using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Takes an answer back: it stays on record and no longer moves the odds.</summary>
public sealed class TakeBackAnswer(IDbContextFactory<LibraryDbContext> factory, CaseFeed feed, TimeProvider clock)
{
    public async Task<Outcome<AnswerRow>> TakeBackAsync(Actor actor, long caseId, long answerId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.SeenToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        var answer = await db.Set<AnswerRow>().SingleOrDefaultAsync(a => a.Id == answerId && a.CaseId == caseId, stop);

        if (answer is null) return new Refusal("case.no-such-answer", "This answer is not in the case. Open the case to see the answers that are.");
        var own = answer.ByDesk ? answer.PersonId == actor.UserId : CaseAccess.SpeaksForOwner(actor, row);
        if (!own) return PeopleRefusals.NotYours;
        if (answer.TakenBackAt is not null) return answer;

        answer.TakenBackAt = clock.GetUtcNow();
        db.AddCaseEvent(caseId, CaseEvents.AnswerTakenBack, actor, answer.TakenBackAt.Value, answer.TraitId);
        await db.SaveChangesAsync(stop);
        feed.Publish(caseId);
        return answer;
    }
}
