using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Cases.Odds;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// Reads a case for review. Before the own seal neither odds nor suggestions, origin clues, other people's scores or opinions are read
/// at all, so no page can show them by mistake.
/// </summary>
public sealed class ReadReview(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, RankCase rank)
{
    public async Task<Outcome<ReviewView>> RunAsync(Actor actor, long caseId, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null) return CaseRefusals.NotFound;
        if (CaseAccess.WhyNotReview(actor, row) is { } no) return no;

        if (!(await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out var gone)) return gone;
        var opinions = await db.Set<OpinionRow>().AsNoTracking()
            .Where(o => o.CaseId == caseId && o.Round == row.Round).OrderBy(o => o.SealedAt).ThenBy(o => o.Id).ToListAsync(stop);
        var isOpen = row.State is CaseState.Open or CaseState.WaitingForLook;
        var opened = isOpen ? ReviewRules.OpenTo(actor.UserId!.Value, [.. opinions.Select(o => o.VolunteerId)]) : new Opened(true, true);
        var looks = await LooksAsync(db, caseId, stop);
        var mine = opinions.SingleOrDefault(o => o.VolunteerId == actor.UserId);

        return new ReviewView(
            row.Id,
            row.Title,
            row.State,
            guide,
            looks,
            await PhotosAsync(db, caseId, looks, stop),
            await AnswersAsync(db, row, actor, opened, looks, stop),
            await RequestsAsync(db, caseId, actor, stop),
            mine is null ? null : Seen(mine),
            opinions.Count,
            opened.Odds ? await OpenAsync(db, row, actor, opened, opinions, stop) : null,
            isOpen ? null : await StandingAsync(db, caseId, stop));
    }

    private async Task<OpenedReview> OpenAsync(
        LibraryDbContext db, CaseRow row, Actor actor, Opened opened, List<OpinionRow> opinions, CancellationToken stop)
    {
        var read = await rank.ReadAsync(db, row, stop);
        var traits = ReadTraits.Say(read);
        var needed = await db.Set<LibrarySettingsRow>().Select(s => (int?)s.OpinionsNeeded).SingleOrDefaultAsync(stop)
            ?? new LibrarySettingsRow().OpinionsNeeded;
        var suggestions = await db.Set<SuggestionRow>().AsNoTracking()
            .Where(s => s.CaseId == row.Id && s.WithdrawnAt == null).OrderBy(s => s.At).ThenBy(s => s.Id).Take(100).ToListAsync(stop);
        var clues = await db.Set<OriginClueRow>().AsNoTracking()
            .Where(c => c.CaseId == row.Id && c.TakenBackAt == null).OrderBy(c => c.At).ThenBy(c => c.Id).Take(100).ToListAsync(stop);
        return new OpenedReview(
            read,
            traits,
            [.. suggestions.Select(s => new SuggestionSeen(s.Id, By(s.ById, row, actor), s.Taxon, s.FormId, s.VarietyName, s.Reason, s.At))],
            clues,
            opened.Opinions ? [.. opinions.Where(o => o.VolunteerId != actor.UserId).Select(Seen)] : null,
            opened.Opinions ? CaseRules.Decide([.. opinions.Select(DecideCase.InHand)], needed, traits) as AnotherWanted : null);
    }

    private static async Task<List<LookSeen>> LooksAsync(LibraryDbContext db, long caseId, CancellationToken stop)
    {
        var rows = await db.Set<LookRow>().AsNoTracking().Where(l => l.CaseId == caseId).OrderBy(l => l.Number).Take(200).ToListAsync(stop);
        return [.. rows.Select(l => new LookSeen(
            l.Id, l.Number, l.Date, l.Parts.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries), l.Note))];
    }

    private static async Task<List<PhotoSeen>> PhotosAsync(LibraryDbContext db, long caseId, List<LookSeen> looks, CancellationToken stop)
    {
        var rows = await db.Set<PhotoRow>().AsNoTracking()
            .Where(p => p.CaseId == caseId && p.RemovedAt == null).OrderBy(p => p.LookId).ThenBy(p => p.At).ThenBy(p => p.Id).Take(200).ToListAsync(stop);
        return [.. rows.Select(p => new PhotoSeen(p.Id, NumberOf(looks, p.LookId), p.Part, p.Width, p.Height, p.Caption, p.IsDrawing))];
    }

    private static async Task<List<AnswerSeen>> AnswersAsync(
        LibraryDbContext db, CaseRow row, Actor actor, Opened opened, List<LookSeen> looks, CancellationToken stop)
    {
        var answers = db.Set<AnswerRow>().AsNoTracking().Where(a => a.CaseId == row.Id && a.TakenBackAt == null);
        var me = actor.UserId;
        var counter = row.FiledForById;
        // Other people's scores are views of the same photos; they stay covered as their opinions do.
        if (!opened.Odds) answers = answers.Where(a => !a.ByDesk || a.PersonId == me || (counter != null && a.PersonId == counter));
        var rows = await answers.OrderBy(a => a.At).ThenBy(a => a.Id).Take(1000).ToListAsync(stop);
        return [.. rows.Select(a => new AnswerSeen(a, a.ByDesk ? By(a.PersonId, row, actor) : Scorer.TheMember, NumberOf(looks, a.LookId)))];
    }

    private static Task<List<RequestSeen>> RequestsAsync(LibraryDbContext db, long caseId, Actor actor, CancellationToken stop)
    {
        var me = actor.UserId;
        return db.Set<LookRequestRow>().AsNoTracking()
            .Where(r => r.CaseId == caseId && r.MetAt == null && r.WithdrawnAt == null).OrderBy(r => r.Id).Take(50)
            .Select(r => new RequestSeen(r.Id, r.Message, r.At, r.ById == me)).ToListAsync(stop);
    }

    private static Task<DeterminationRow?> StandingAsync(LibraryDbContext db, long caseId, CancellationToken stop) =>
        db.Set<DeterminationRow>().AsNoTracking().Where(d => d.CaseId == caseId && d.SupersededAt == null).OrderByDescending(d => d.Id).FirstOrDefaultAsync(stop);

    private static int NumberOf(List<LookSeen> looks, long id) => looks.Find(l => l.Id == id)?.Number ?? 0;

    internal static Scorer By(Guid? person, CaseRow row, Actor actor) =>
        person == actor.UserId ? Scorer.Me
        : person is null || person == row.OwnerId || person == row.FiledForById ? Scorer.TheMember
        : Scorer.AnotherVolunteer;

    internal static OpinionSeen Seen(OpinionRow row) => new(
        row.SealedAt,
        new NamedTaxon(row.SealedTaxon, row.SealedQualifier),
        row.SealedInTwenty,
        row.SealedNote,
        row.FinalAt,
        row.FinalTaxon is null ? null : new NamedTaxon(row.FinalTaxon, row.FinalQualifier ?? Qualifiers.None),
        row.FinalNote,
        row.Revision);
}
