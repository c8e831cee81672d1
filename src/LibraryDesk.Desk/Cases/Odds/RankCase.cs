using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Odds;

/// <summary>Ranks a case by its guide version.</summary>
public sealed class RankCase(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    /// <summary>The ranking, for an actor who may see the odds.</summary>
    public async Task<Outcome<CaseRanking>> ForAsync(Actor actor, long caseId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null) return CaseRefusals.NotFound;
        var hasSealed = actor.IsVolunteer
            && await db.Set<OpinionRow>().AnyAsync(o => o.CaseId == caseId && o.Round == row.Round && o.VolunteerId == actor.UserId, stop);
        if (CaseAccess.WhyNoOdds(actor, row, hasSealed) is { } no) return no;
        if (!(await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out _, out var gone)) return gone;
        return await ReadAsync(db, row, stop);
    }

    /// <summary>The ranking, for an act that has checked its actor already.</summary>
    public async Task<CaseRanking> ReadAsync(LibraryDbContext db, CaseRow row, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(row);
        return await ReadAsync(db, row, await shelf.GetAsync(row.GuideId, row.GuideVersion, stop), stop);
    }

    /// <summary>As <see cref="ReadAsync(LibraryDbContext, CaseRow, CancellationToken)"/> in the words the guide was written in, for what is kept or sent.</summary>
    public async Task<CaseRanking> ReadAsWrittenAsync(LibraryDbContext db, CaseRow row, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(row);
        return await ReadAsync(db, row, await shelf.GetAsWrittenAsync(row.GuideId, row.GuideVersion, stop), stop);
    }

    private static async Task<CaseRanking> ReadAsync(LibraryDbContext db, CaseRow row, CompiledGuide guide, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(db);
        var answers = await db.Set<AnswerRow>().AsNoTracking().Where(a => a.CaseId == row.Id && a.TakenBackAt == null).ToListAsync(stop);
        var parts = await db.Set<LookRow>().Where(l => l.CaseId == row.Id).OrderByDescending(l => l.Number).Select(l => l.Parts).FirstOrDefaultAsync(stop);
        var clues = await db.Set<OriginClueRow>().AsNoTracking().Where(o => o.CaseId == row.Id && o.TakenBackAt == null).OrderBy(o => o.Id).ToListAsync(stop);
        return Rank(row.Id, guide, answers, PartsOf(parts), await CaseOrigin.ReadAsync(db, guide, clues, stop));
    }

    /// <summary>The ranking of answers in hand; nothing is read.</summary>
    public static CaseRanking Rank(long caseId, CompiledGuide guide, IEnumerable<AnswerRow> answers, IReadOnlySet<string> parts, CaseOrigin origin) =>
        new(caseId, guide, CaseEvidence.Of(guide, answers), origin, parts);

    /// <summary>Part ids of a look as they stand in its row.</summary>
    public static IReadOnlySet<string> PartsOf(string? joined) =>
        (joined ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries).ToHashSet();
}
