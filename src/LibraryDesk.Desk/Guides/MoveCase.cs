using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Review;

namespace LibraryDesk.Desk.Guides;

/// <summary>An open case by its own version and by the version in use.</summary>
/// <param name="Before">By the version the case has.</param>
/// <param name="After">By the version in use.</param>
/// <param name="Silent">Names of traits that were answered and that the newer version does not have, or not with that answer: they would say nothing any more.</param>
public sealed record CaseMove(long CaseId, string Title, CaseRanking Before, CaseRanking After, IReadOnlyList<string> Silent);

/// <summary>
/// Moves an open case to the guide version in use. A determined case keeps its version. Whoever moves it sees the odds of both, so it is for those of the desk to
/// whom the odds are open already.
/// </summary>
public sealed class MoveCase(IDbContextFactory<LibraryDbContext> factory, CaseTurn turn, GuideShelf shelf, RankCase rank, TimeProvider clock)
{
    /// <summary>The kind of line in the case's history; the detail is "old to new".</summary>
    public const string Moved = "guide-moved";

    /// <summary>Shows what a move would do.</summary>
    public async Task<Outcome<CaseMove>> PreviewAsync(Actor actor, long caseId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null) return CaseRefusals.NotFound;
        var current = await shelf.CurrentAsWrittenAsync(row.GuideId, stop);
        if (await WhyNotAsync(db, actor, row, current?.Guide.Version, stop) is { } no) return no;
        if (!(await shelf.FindAsWrittenAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out _, out var gone)) return gone;
        var before = await rank.ReadAsync(db, row, stop);
        row.GuideVersion = current!.Guide.Version;
        var after = await rank.ReadAsync(db, row, stop);
        return new CaseMove(caseId, row.Title, before, after, Silent(before, after));
    }

    /// <summary>Moves it.</summary>
    public async Task<Outcome<CaseRow>> RunAsync(Actor actor, long caseId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var before = await factory.CreateDbContextAsync(stop);
        var guideId = await before.Set<CaseRow>().Where(c => c.Id == caseId).Select(c => c.GuideId).SingleOrDefaultAsync(stop);
        if (guideId is null) return CaseRefusals.NotFound;
        // Fetched before the case is locked: the shelf may have to store a guide, on a connection of its own.
        var current = await shelf.CurrentAsWrittenAsync(guideId, stop);
        return await turn.TakeAsync<CaseRow>(caseId, async hand =>
        {
            if (await WhyNotAsync(hand.Db, actor, hand.Case, current?.Guide.Version, stop) is { } no) return no;
            foreach (var opinion in await hand.OpinionsAsync(stop))
            {
                foreach (var taxon in new[] { opinion.SealedTaxon, opinion.FinalTaxon }.OfType<string>().Where(t => t != NamedTaxon.CannotTell))
                {
                    if (current!.Guide.FindCandidate(taxon) is null) return GuideRefusals.CandidateGone(hand.Guide.Guide.FindCandidate(taxon)?.Name ?? taxon);
                }
            }
            hand.Tell(Moved, actor.UserId, $"{hand.Case.GuideVersion} to {current!.Guide.Version}", clock.GetUtcNow());
            hand.Case.GuideVersion = current.Guide.Version;
            return hand.Case;
        }, stop);
    }

    private static async Task<Refusal?> WhyNotAsync(LibraryDbContext db, Actor actor, CaseRow row, string? newest, CancellationToken stop)
    {
        if (!CaseAccess.MaySee(actor, row)) return CaseRefusals.NotFound;
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        if (row.State is not (CaseState.Open or CaseState.WaitingForLook)) return GuideRefusals.NotOpen;
        var hasSealed = await db.Set<OpinionRow>().AnyAsync(o => o.CaseId == row.Id && o.Round == row.Round && o.VolunteerId == actor.UserId, stop);
        if (CaseAccess.WhyNoOdds(actor, row, hasSealed) is { } covered) return covered;
        return newest is null || newest == row.GuideVersion ? GuideRefusals.NotNewer : null;
    }

    private static IReadOnlyList<string> Silent(CaseRanking before, CaseRanking after)
    {
        var heard = after.Evidence.Answers.Select(a => (a.Trait, a.Look, a.Person)).ToHashSet();
        return [.. before.Evidence.Answers.Where(a => !heard.Contains((a.Trait, a.Look, a.Person)))
            .Select(a => before.Guide.FindTrait(a.Trait)?.Name ?? a.Trait).Distinct()];
    }
}
