using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Seeds.Ledger;

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
        if (!(await shelf.FindAsync(row.GuideId, standing?.GuideVersion ?? row.GuideVersion, stop)).TryGet(out var guide, out var gone)) return gone;

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
            ClosingNotes.InWords(row.ClosingNote),
            MaySuggest: opened.Odds && row.State is (CaseState.Open or CaseState.WaitingForLook),
            MayReopen: finished,
            MayClose: row.State == CaseState.Determined && (actor.IsVolunteer || CaseAccess.IsOwner(actor, row)),
            MayClaim: actor.IsLibrarian && standing is { OriginPacketCode: not null, ClaimSequence: null, Qualifier: "" })
        {
            MayClaimSpecies = actor.IsLibrarian && standing is { OriginPacketCode: null, ClaimSequence: null, Qualifier: "" },
            Tied = actor.IsVolunteer && standing is { Qualifier: "" } ? await TiedAsync(db, standing, stop) : null,
        };
    }

    private static async Task<TiedLot?> TiedAsync(LibraryDbContext db, DeterminationRow standing, CancellationToken stop)
    {
        var codes = db.Set<OriginClueRow>().Where(clue => clue.CaseId == standing.CaseId && clue.Tied && clue.TakenBackAt == null).Select(clue => clue.PacketCode);
        var packet = await db.Set<PacketRow>().Where(row => row.Code == standing.OriginPacketCode || codes.Contains(row.Code))
            .Join(db.Set<LotRow>(), row => row.LotId, lot => lot.Id, (row, lot) => new { row.Code, LotId = lot.Id, LotCode = lot.Code })
            .OrderBy(row => row.Code).FirstOrDefaultAsync(stop);
        if (packet is null) return null;
        var name = (await LineageNames.OfAsync(db, [packet.LotId], stop))[packet.LotId];
        return new(packet.LotCode, packet.Code, name.Species is { } species && species != standing.Taxon);
    }

    private static Opened OpenTo(Actor actor, CaseRow row, List<OpinionRow> opinions)
    {
        if (CaseAccess.IsFinished(row)) return new Opened(true, true);
        if (CaseAccess.SpeaksForOwner(actor, row)) return new Opened(true, opinions.Count >= OpenTogether);
        return ReviewRules.OpenTo(actor.UserId ?? Guid.Empty, [.. opinions.Select(o => o.VolunteerId)]);
    }
}
