using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Cases.Odds;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Reads opinions, suggestions and determination for the page of a case: for its owner, and for the desk.</summary>
public sealed class ReadOutcome(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    // The owner reads opinions when the volunteers do: together, not the first alone.
    private const int OpenTogether = 2;

    public async Task<Outcome<OutcomeView>> RunAsync(Actor actor, long caseId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CaseRow>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null || !CaseAccess.MaySee(actor, row)) return CaseRefusals.NotFound;

        var opinions = await db.Set<OpinionRow>().AsNoTracking()
            .Where(o => o.CaseId == caseId && o.Round == row.Round).OrderBy(o => o.SealedAt).ThenBy(o => o.Id).ToListAsync(stop);
        var determinations = await db.Set<DeterminationRow>().AsNoTracking()
            .Where(d => d.CaseId == caseId).OrderByDescending(d => d.Id).ToListAsync(stop);
        var opened = OpenTo(actor, row, opinions);
        var suggestions = !opened.Odds ? null : await db.Set<SuggestionRow>().AsNoTracking()
            .Where(s => s.CaseId == caseId && s.WithdrawnAt == null).OrderBy(s => s.At).ThenBy(s => s.Id).Take(100).ToListAsync(stop);
        var needed = await db.Set<LibrarySettingsRow>().Select(s => (int?)s.OpinionsNeeded).SingleOrDefaultAsync(stop)
            ?? new LibrarySettingsRow().OpinionsNeeded;
        var standing = determinations.Find(d => d.SupersededAt is null);
        var guide = await shelf.GetAsync(row.GuideId, standing?.GuideVersion ?? row.GuideVersion, stop);

        var finished = CaseAccess.IsFinished(row);
        return new OutcomeView(
            row.Id,
            row.State,
            guide.Guide,
            opinions.Count,
            needed,
            opened.Opinions ? [.. opinions.Select(ReadReview.Seen)] : null,
            standing,
            [.. determinations.Where(d => d.SupersededAt is not null)],
            suggestions is null ? null : [.. suggestions.Select(s => new SuggestionSeen(
                s.Id, ReadReview.By(s.ById, row, actor), s.Taxon, s.FormId, s.VarietyName, s.Reason, s.At))],
            row.ClosingNote,
            MaySuggest: opened.Odds && row.State is (CaseState.Open or CaseState.WaitingForLook),
            MayReopen: finished,
            MayClose: row.State == CaseState.Determined && (actor.IsVolunteer || CaseAccess.IsOwner(actor, row)),
            MayClaim: actor.IsLibrarian && standing is { OriginPacketCode: not null, ClaimSequence: null, Qualifier: "" });
    }

    private static Opened OpenTo(Actor actor, CaseRow row, List<OpinionRow> opinions)
    {
        if (CaseAccess.IsFinished(row)) return new Opened(true, true);
        if (CaseAccess.SpeaksForOwner(actor, row)) return new Opened(true, opinions.Count >= OpenTogether);
        return ReviewRules.OpenTo(actor.UserId ?? Guid.Empty, [.. opinions.Select(o => o.VolunteerId)]);
    }
}
