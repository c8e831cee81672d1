using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Says which parts the plant carries at a look. What it does not carry is not asked.</summary>
public sealed class SetParts(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, CaseFeed feed, TimeProvider clock)
{
    /// <param name="lookId">The look; null for the latest.</param>
    /// <param name="parts">Part ids of the case's guide.</param>
    public async Task<Outcome<LookRow>> SetAsync(Actor actor, long caseId, long? lookId, IReadOnlyList<string> parts, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(parts);
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        if (await LookOf.FindAsync(db, caseId, lookId, stop) is not { } look) return LookOf.NoSuchLook;
        if (!(await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out var gone)) return gone;

        var known = guide.Guide.Parts.Select(p => p.Id).ToList();
        if (parts.FirstOrDefault(p => !known.Contains(p)) is { } unknown)
            return new Refusal("case.part", $"\"{unknown}\" is not a part this guide knows. Tick parts from the list.");
        if (parts.Count == 0) return new Refusal("case.parts", "Tick at least one part that is there now, or come back when there is something to see.");

        look.Parts = string.Join(',', known.Where(parts.Contains));
        var now = clock.GetUtcNow();
        db.AddCaseEvent(caseId, CaseEvents.PartsSet, actor, now, look.Parts);
        await LookRequests.MeetAsync(db, row, part: null, trait: null, now, stop);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return CaseRefusals.ChangedMeanwhile;
        }
        feed.Publish(caseId);
        return look;
    }
}
