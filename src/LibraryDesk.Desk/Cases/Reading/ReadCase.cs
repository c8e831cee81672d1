using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Reading;

/// <summary>Reads a case for its page.</summary>
public sealed class ReadCase(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, LibrarySettings settings)
{
    public async Task<Outcome<CaseView>> ReadAsync(Actor actor, long caseId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null || !CaseAccess.MaySee(actor, row)) return CaseRefusals.NotFound;
        var looks = await db.Set<LookRow>().AsNoTracking().Where(l => l.CaseId == caseId).OrderBy(l => l.Number).ToListAsync(stop);
        var answers = await db.Set<AnswerRow>().AsNoTracking().Where(a => a.CaseId == caseId && a.TakenBackAt == null).OrderBy(a => a.Id).ToListAsync(stop);
        var photos = await db.Set<PhotoRow>().AsNoTracking().Where(p => p.CaseId == caseId && p.RemovedAt == null).OrderBy(p => p.At).ThenBy(p => p.Id).ToListAsync(stop);
        var clues = await db.Set<OriginClueRow>().AsNoTracking().Where(o => o.CaseId == caseId && o.TakenBackAt == null).OrderBy(o => o.Id).ToListAsync(stop);
        var requests = await db.Set<LookRequestRow>().AsNoTracking()
            .Where(r => r.CaseId == caseId && r.MetAt == null && r.WithdrawnAt == null).OrderBy(r => r.Id).ToListAsync(stop);
        var determination = await db.Set<DeterminationRow>().AsNoTracking().SingleOrDefaultAsync(d => d.CaseId == caseId && d.SupersededAt == null, stop);
        var volunteers = await db.Set<OpinionRow>().Where(o => o.CaseId == caseId && o.Round == row.Round).Select(o => o.VolunteerId).ToListAsync(stop);
        var lastEvent = await db.Set<CaseEventRow>().Where(e => e.CaseId == caseId).MaxAsync(e => (long?)e.Id, stop) ?? 0;
        if (!(await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out var gone)) return gone;
        var hasSealed = actor.UserId is { } reader && volunteers.Contains(reader);
        var open = CaseAccess.WhyNoOdds(actor, row, hasSealed) is null;
        var origin = open ? await CaseOrigin.ReadAsync(db, guide, clues, stop) : CaseOrigin.None;
        var library = await settings.ReadAsync(stop);
        // Who can still give an unseen opinion sees neither other volunteers' scores nor what the member says of the origin.
        if (!open) answers.RemoveAll(a => a.ByDesk && a.PersonId != actor.UserId);

        var parts = RankCase.PartsOf(looks[^1].Parts);
        return new CaseView(
            row,
            guide,
            CaseAccess.SpeaksForOwner(actor, row),
            open ? RankCase.Rank(caseId, guide, answers, parts, origin) : null,
            Views(row, guide, looks, answers, photos, open ? origin : null),
            open ? clues : [],
            requests,
            determination,
            volunteers.Count,
            library.OpinionsNeeded,
            lastEvent,
            open ? await NewerAsync(actor, row, stop) : null);
    }

    private async Task<string?> NewerAsync(Actor actor, CaseRow row, CancellationToken stop)
    {
        if (!actor.IsVolunteer || row.State is not (CaseState.Open or CaseState.WaitingForLook)) return null;
        var version = (await shelf.CurrentAsync(row.GuideId, stop))?.Guide.Version;
        return version == row.GuideVersion ? null : version;
    }

    private static List<LookView> Views(
        CaseRow row, CompiledGuide guide, List<LookRow> looks, List<AnswerRow> answers, List<PhotoRow> photos, CaseOrigin? origin)
    {
        var views = new List<LookView>();
        CaseRanking? before = origin is null ? null : RankCase.Rank(row.Id, guide, [], RankCase.PartsOf(""), origin);
        var sofar = new List<AnswerRow>();
        foreach (var look in looks)
        {
            var parts = RankCase.PartsOf(look.Parts);
            List<AnswerRow> own = [.. answers.Where(a => a.LookId == look.Id)];
            sofar.AddRange(own);
            var after = origin is null ? null : RankCase.Rank(row.Id, guide, sofar, parts, origin);
            views.Insert(0, new LookView(look, parts, own, [.. photos.Where(p => p.LookId == look.Id)], before, after));
            before = after;
        }
        return views;
    }
}
