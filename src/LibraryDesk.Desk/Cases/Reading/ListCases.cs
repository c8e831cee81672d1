using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;

namespace LibraryDesk.Desk.Cases.Reading;

/// <summary>A case in its owner's list.</summary>
/// <param name="Ranking">Null where the guide version it is read by is gone.</param>
/// <param name="Determination">The one that stands; null without.</param>
/// <param name="Opinions">Opinions sealed in this round.</param>
/// <param name="Requests">Looks that the desk asked for and that are still open.</param>
public sealed record OwnCase(CaseRow Case, CaseRanking? Ranking, DeterminationRow? Determination, int Opinions, IReadOnlyList<LookRequestRow> Requests)
{
    public bool Grows => Case.Specimen is Specimen.Plant or Specimen.Seedling;
}

/// <summary>How many cases stand where, for the door. Counts only: no title, no person.</summary>
public sealed record DeskCounts(int Open, int Waiting, int Determined);

/// <summary>Lists the actor's own cases, and counts all.</summary>
public sealed class ListCases(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    public const int MostRows = 200;

    /// <summary>Own cases and those filed for others at the counter, drafts too, newest first. A visitor without a link has none.</summary>
    public async Task<IReadOnlyList<OwnCase>> OwnAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var hashes = (actor.GuestKey ?? "").Split(CaseAccess.KeySeparator, StringSplitOptions.RemoveEmptyEntries).Select(CaseAccess.HashOf).ToArray();
        var me = actor.UserId;
        if (me is null && hashes.Length == 0) return [];
        var rows = await db.Set<CaseRow>().AsNoTracking()
            .Where(c => (me != null && (c.OwnerId == me || c.FiledForById == me)) || (c.GuestKeyHash != null && hashes.Contains(c.GuestKeyHash)))
            .OrderByDescending(c => c.Id).Take(MostRows).ToListAsync(stop);
        var ids = rows.Select(c => c.Id).ToArray();
        var answers = (await db.Set<AnswerRow>().AsNoTracking().Where(a => ids.Contains(a.CaseId) && a.TakenBackAt == null).ToListAsync(stop)).ToLookup(a => a.CaseId);
        var looks = (await db.Set<LookRow>().AsNoTracking().Where(l => ids.Contains(l.CaseId)).OrderByDescending(l => l.Number).ToListAsync(stop)).ToLookup(l => l.CaseId);
        var clues = (await db.Set<OriginClueRow>().AsNoTracking().Where(o => ids.Contains(o.CaseId) && o.TakenBackAt == null).OrderBy(o => o.Id).ToListAsync(stop)).ToLookup(o => o.CaseId);
        var determinations = (await db.Set<DeterminationRow>().AsNoTracking().Where(d => ids.Contains(d.CaseId) && d.SupersededAt == null).ToListAsync(stop)).ToLookup(d => d.CaseId);
        var opinions = (await db.Set<OpinionRow>().Where(o => ids.Contains(o.CaseId)).Select(o => new { o.CaseId, o.Round }).ToListAsync(stop)).ToLookup(o => o.CaseId);
        var requests = (await db.Set<LookRequestRow>().AsNoTracking()
            .Where(r => ids.Contains(r.CaseId) && r.MetAt == null && r.WithdrawnAt == null).OrderBy(r => r.Id).ToListAsync(stop)).ToLookup(r => r.CaseId);

        var own = new List<OwnCase>(rows.Count);
        foreach (var row in rows)
        {
            CaseRanking? ranking = null;
            if ((await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out _))
            {
                var origin = await CaseOrigin.ReadAsync(db, guide, [.. clues[row.Id]], stop);
                ranking = RankCase.Rank(row.Id, guide, answers[row.Id], RankCase.PartsOf(looks[row.Id].FirstOrDefault()?.Parts), origin);
            }
            own.Add(new OwnCase(
                row,
                ranking,
                determinations[row.Id].FirstOrDefault(),
                opinions[row.Id].Count(o => o.Round == row.Round),
                [.. requests[row.Id]]));
        }
        return own;
    }

    public async Task<DeskCounts> CountAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var counts = await db.Set<CaseRow>().GroupBy(c => c.State).Select(g => new { State = g.Key, Count = g.Count() }).ToListAsync(stop);
        int Of(CaseState state) => counts.SingleOrDefault(c => c.State == state)?.Count ?? 0;
        // What is determined stays so when its case is closed.
        var determined = await db.Set<DeterminationRow>().CountAsync(d => d.SupersededAt == null, stop);
        return new DeskCounts(Of(CaseState.Open), Of(CaseState.WaitingForLook), determined);
    }
}
