using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>
/// Keeps an answer to one trait question. An earlier answer by the same person at the same look is taken back, not overwritten.
/// Whoever speaks for the owner answers as the owner; a volunteer's score counts beside it.
/// </summary>
public sealed class SaveAnswer(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, CaseFeed feed, TimeProvider clock)
{
    public const string AnswerCode = "case.answer";

    /// <param name="lookId">The look; null for the latest.</param>
    /// <param name="contests">The answer this one contests; null for none.</param>
    public async Task<Outcome<AnswerRow>> SaveAsync(
        Actor actor, long caseId, long? lookId, GivenAnswer given, CancellationToken stop, long? contests = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(given);
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.SeenToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        if (await LookOf.FindAsync(db, caseId, lookId, stop) is not { } look) return LookOf.NoSuchLook;
        var byDesk = !CaseAccess.SpeaksForOwner(actor, row);
        var earlier = await db.Set<AnswerRow>()
            .Where(a => a.LookId == look.Id && a.TraitId == given.TraitId && a.TakenBackAt == null && a.ByDesk == byDesk)
            .ToListAsync(stop);
        if (!(await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out var gone)) return gone;

        if (Fault(guide, given) is { } fault) return fault;
        var now = clock.GetUtcNow();
        // The owner's side answers with one voice, whoever of them typed it.
        foreach (var old in earlier.Where(a => !byDesk || a.PersonId == actor.UserId)) old.TakenBackAt = now;
        var answer = RowOf(given, row, look, actor, byDesk, contests, now);
        db.Add(answer);
        db.AddCaseEvent(caseId, CaseEvents.Answered, actor, now, given.TraitId);
        // "Can't see it yet" is an answer, but not the one the desk waits for; nor is a volunteer's own score.
        if (!byDesk && given.Kind is (AnswerKind.States or AnswerKind.Measure))
            await LookRequests.MeetAsync(db, row, part: null, given.TraitId, now, stop);

        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return CaseRefusals.ChangedMeanwhile;
        }
        feed.Publish(caseId);
        return answer;
    }

    private static AnswerRow RowOf(GivenAnswer given, CaseRow row, LookRow look, Actor actor, bool byDesk, long? contests, DateTimeOffset now) => new()
    {
        CaseId = row.Id,
        LookId = look.Id,
        TraitId = given.TraitId,
        Kind = given.Kind,
        States = string.Join('|', given.States.Distinct()),
        Low = given.Low,
        High = given.High ?? given.Low,
        Sureness = given.Sureness,
        PersonId = actor.UserId,
        ByDesk = byDesk,
        ContestsAnswerId = contests,
        At = now,
    };

    private static Refusal? Fault(CompiledGuide guide, GivenAnswer given)
    {
        if (guide.Guide.FindTrait(given.TraitId) is null) return new Refusal(AnswerCode, "The guide of this case does not ask this. Go on with the next question.");
        if (!CaseEvidence.Sureness.ContainsKey(given.Sureness)) return new Refusal(AnswerCode, "Say how clear it was: quite clear, fairly clear or faint.");
        if (given.Kind is AnswerKind.CantSeeYet or AnswerKind.NotSure) return null;
        if (given.Kind == AnswerKind.States && given.States.Count == 0) return new Refusal(AnswerCode, "Choose what you see, or \"Can't see it yet\", or \"Not sure\".");
        if (given.Kind == AnswerKind.Measure && given.Low is null) return new Refusal(AnswerCode, "Type the number you measured, or choose \"Can't see it yet\", or \"Not sure\".");
        var answer = given.Kind == AnswerKind.States
            ? Answer.Of(given.TraitId, given.States)
            : Answer.Between(given.TraitId, given.Low ?? 0, given.High ?? given.Low ?? 0);
        return Evidence.Check(guide, [answer]).Faults is [var fault, ..] ? Fault(guide, answer, fault.Code) : null;
    }

    // The engine's own words name traits and states as files do; a person reads the question's.
    private static Refusal Fault(CompiledGuide guide, Answer answer, string code)
    {
        if (code == EvidenceFault.NotAMeasure && answer.Bands[0].Low > answer.Bands[0].High) return new Refusal(AnswerCode, "Give the smaller number first, then the larger.");
        if (code == EvidenceFault.NotAMeasure) return new Refusal(AnswerCode, "Give a number above 0.");
        if (code != EvidenceFault.AbsurdMeasure) return new Refusal(AnswerCode, "Choose one of the answers shown here, or \"Not sure\".");
        var usual = guide.Guide.Candidates.Select(candidate => guide.UsualRange(candidate.Id, null, answer.Trait)).OfType<(double Low, double High)>().ToList();
        if (usual.Count == 0) return new Refusal(AnswerCode, "Give a number above 0.");
        var (low, high) = (SignificantFigures.Round(usual.Min(range => range.Low), 2), SignificantFigures.Round(usual.Max(range => range.High), 2));
        return new Refusal(AnswerCode, $"That is far from anything known of it, which is about {low:0.###} to {high:0.###} {guide.Guide.FindTrait(answer.Trait)?.Unit}. Check the unit.");
    }
}
