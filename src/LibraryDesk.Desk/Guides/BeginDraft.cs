using LibraryDesk.Data.Guides;
using LibraryDesk.Data.Provider;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Desk.Guides;

/// <summary>Begins the draft of a guide's next version, or ends it without publishing.</summary>
public sealed class BeginDraft(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, GuideShelf shelf, TimeProvider clock)
{
    /// <param name="fromVersion">The version to change; null or empty for the one in use.</param>
    public async Task<Outcome<GuideDraftRow>> RunAsync(Actor actor, string guideId, string? fromVersion, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (await shelf.CurrentAsWrittenAsync(guideId, stop) is not { } current) return GuideRefusals.NotFound;
        var from = string.IsNullOrWhiteSpace(fromVersion) ? current.Guide.Version : fromVersion;
        if (!(await shelf.FindAsWrittenAsync(guideId, from, stop)).TryGet(out var basis, out var gone)) return gone;

        var now = clock.GetUtcNow();
        // What was learned stays learned, unless the librarian says otherwise.
        var row = new GuideDraftRow
        {
            GuideId = guideId,
            BaseVersion = from,
            Learns = DeterminedCounts.AreIn(basis.Guide),
            StartedAt = now,
            ChangedAt = now,
            ChangedById = actor.UserId,
        };
        await using var db = await factory.CreateDbContextAsync(stop);
        if (await db.Set<GuideDraftRow>().AnyAsync(d => d.GuideId == guideId, stop)) return GuideRefusals.DraftThere;
        db.Add(row);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            return GuideRefusals.DraftThere;
        }
        return row;
    }

    /// <summary>Throws the draft away, its changes and re-runs with it. Published versions are untouched.</summary>
    public async Task<Outcome<string>> DiscardAsync(Actor actor, string guideId, long shownRevision, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<GuideDraftRow>().SingleOrDefaultAsync(d => d.GuideId == guideId, stop);
        if (row is null) return GuideRefusals.NoDraft;
        db.Entry(row).Property(d => d.Revision).OriginalValue = shownRevision;
        db.Remove(row);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return GuideRefusals.ChangedMeanwhile;
        }
        return guideId;
    }
}
