using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>The review list, and how many open cases there are beside those the reader owns or filed.</summary>
/// <param name="Lines">Open and waiting cases the reader may review, those they have finished among them; unordered.</param>
/// <param name="Own">Open cases left out because the reader owns or filed them.</param>
public sealed record QueueView(IReadOnlyList<QueueLine> Lines, int Own);

/// <summary>Lists the cases that want opinions. No odds, no candidates, no names of members.</summary>
public sealed class ListReviews(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, LibraryClock clock)
{
    /// <summary>Most cases read at once, the longest open first.</summary>
    public const int Most = 500;

    public async Task<Outcome<QueueView>> ReadAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var me = actor.UserId;
        var needed = await db.Set<LibrarySettingsRow>().Select(s => (int?)s.OpinionsNeeded).SingleOrDefaultAsync(stop)
            ?? new LibrarySettingsRow().OpinionsNeeded;
        var open = db.Set<CaseRow>().Where(c => c.State == CaseState.Open || c.State == CaseState.WaitingForLook);
        var own = await open.CountAsync(c => c.OwnerId == me || c.FiledForById == me, stop);
        var read = await ReadAsync(db, open.Where(c => c.OwnerId != me && c.FiledForById != me), me, stop);

        var today = clock.Today;
        var lines = new List<QueueLine>(read.Count);
        foreach (var row in read)
        {
            // A case whose guide version is gone stays in the queue, so that somebody finds it; its page says what is wrong.
            (await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out _);
            lines.Add(Line(row, guide?.Guide, needed, today));
        }
        return new QueueView(lines, own);
    }

    /// <summary>How many cases want the reader's opinion: open, not their own, and not finished by them in this round.</summary>
    public async Task<Outcome<int>> CountAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var me = actor.UserId;
        return await db.Set<CaseRow>()
            .Where(c => (c.State == CaseState.Open || c.State == CaseState.WaitingForLook) && c.OwnerId != me && c.FiledForById != me)
            .CountAsync(c => !db.Set<OpinionRow>().Any(o => o.CaseId == c.Id && o.Round == c.Round && o.VolunteerId == me && o.FinalAt != null), stop);
    }

    private static Task<List<Read>> ReadAsync(LibraryDbContext db, IQueryable<CaseRow> cases, Guid? me, CancellationToken stop)
    {
        var looks = db.Set<LookRow>();
        var photos = db.Set<PhotoRow>().Where(p => p.RemovedAt == null);
        var opinions = db.Set<OpinionRow>();
        var requests = db.Set<LookRequestRow>().Where(r => r.MetAt == null && r.WithdrawnAt == null);
        return cases.OrderBy(c => c.FiledAt).ThenBy(c => c.Id).Take(Most).AsNoTracking().Select(c => new Read(
            c.Id,
            c.Title,
            c.State,
            c.GuideId,
            c.GuideVersion,
            c.Round,
            c.FiledAt,
            c.StateSince,
            looks.Count(l => l.CaseId == c.Id),
            looks.Where(l => l.CaseId == c.Id).OrderByDescending(l => l.Number).Select(l => l.Parts).FirstOrDefault(),
            photos.Count(p => p.CaseId == c.Id),
            photos.Where(p => p.CaseId == c.Id).OrderBy(p => p.At).ThenBy(p => p.Id).Select(p => (Guid?)p.Id).FirstOrDefault(),
            opinions.Count(o => o.CaseId == c.Id && o.Round == c.Round),
            opinions.Count(o => o.CaseId == c.Id && o.Round == c.Round && o.FinalAt == null),
            opinions.Any(o => o.CaseId == c.Id && o.Round == c.Round && o.VolunteerId == me),
            opinions.Any(o => o.CaseId == c.Id && o.Round == c.Round && o.VolunteerId == me && o.FinalAt != null),
            requests.Count(r => r.CaseId == c.Id))).ToListAsync(stop);
    }

    private QueueLine Line(Read row, CropGuide? guide, int needed, DateOnly today)
    {
        var carried = (row.Parts ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var parts = guide?.Parts.Where(p => carried.Contains(p.Id)).ToList() ?? [];
        var since = row.Round > 1 ? row.StateSince : row.FiledAt ?? row.StateSince;
        return new QueueLine(
            row.Id,
            row.Title,
            row.State,
            [.. parts.Select(p => p.Id)],
            [.. parts.Select(p => p.Name)],
            row.Looks,
            row.Photos,
            row.FirstPhoto,
            Math.Max(0, today.DayNumber - clock.DayOf(since).DayNumber),
            row.Sealed,
            row.InReview > 0 && row.Sealed >= needed ? 0 : row.Sealed + 1,
            row.MineFinal ? MyPart.Finished : row.MineSealed ? MyPart.InReview : MyPart.NotYet,
            row.LooksAsked,
            guide is not null && parts.Contains(guide.Parts[0]) && parts.Any(p => p.Stage == guide.Stages[^1].Id));
    }

    private sealed record Read(
        long Id,
        string Title,
        CaseState State,
        string GuideId,
        string GuideVersion,
        int Round,
        DateTimeOffset? FiledAt,
        DateTimeOffset StateSince,
        int Looks,
        string? Parts,
        int Photos,
        Guid? FirstPhoto,
        int Sealed,
        int InReview,
        bool MineSealed,
        bool MineFinal,
        int LooksAsked);
}
