using LibraryDesk.Data.Guides;
using LibraryDesk.Data.Provider;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Editing;

namespace LibraryDesk.Desk.Guides;

/// <summary>
/// Changes a draft, undoes, puts back. Each names the revision that its form showed: where another librarian was quicker nothing is written, and the second looks
/// at the first's change before making their own.
/// </summary>
public sealed class ChangeDraft(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, GuideShelf shelf, TimeProvider clock)
{
    /// <summary>Longest change in characters of JSON: a trait with all its states is a tenth of it.</summary>
    public const int Longest = 60_000;

    /// <summary>Makes one change. A change that changes nothing is taken and leaves no trace.</summary>
    public Task<Outcome<GuideDraftRow>> RunAsync(Actor actor, string guideId, long shownRevision, GuideEdit edit, CancellationToken stop) =>
        TurnAsync(actor, guideId, shownRevision, async (db, draft) =>
        {
            var json = GuideEditText.Write(edit);
            if (json.Length > Longest) return GuideRefusals.TooLong;
            if (edit.Apply(draft.Guide) is not { } changed) return GuideRefusals.TargetGone;
            if (GuideDifference.Between(draft.Guide, changed).IsNone) return draft.Row;
            var later = await db.Set<GuideEditRow>().Where(e => e.DraftId == draft.Row.Id && e.UndoneAt != null).ToListAsync(stop);
            db.RemoveRange(later);
            // Numbers of removed rows are not used again: a unique index does not know that they go in the same save.
            var last = await db.Set<GuideEditRow>().Where(e => e.DraftId == draft.Row.Id).MaxAsync(e => (int?)e.Number, stop) ?? 0;
            db.Add(new GuideEditRow { DraftId = draft.Row.Id, Number = last + 1, Json = json, ById = actor.UserId, At = clock.GetUtcNow() });
            return draft.Row;
        }, stop);

    /// <summary>Undoes the last change that stands.</summary>
    public Task<Outcome<GuideDraftRow>> UndoAsync(Actor actor, string guideId, long shownRevision, CancellationToken stop) =>
        TurnAsync(actor, guideId, shownRevision, async (db, draft) =>
        {
            var last = await db.Set<GuideEditRow>().Where(e => e.DraftId == draft.Row.Id && e.UndoneAt == null).OrderByDescending(e => e.Number).FirstOrDefaultAsync(stop);
            if (last is null) return GuideRefusals.NothingToUndo;
            last.UndoneAt = clock.GetUtcNow();
            return draft.Row;
        }, stop);

    /// <summary>Puts the change that was undone last back.</summary>
    public Task<Outcome<GuideDraftRow>> PutBackAsync(Actor actor, string guideId, long shownRevision, CancellationToken stop) =>
        TurnAsync(actor, guideId, shownRevision, async (db, draft) =>
        {
            var first = await db.Set<GuideEditRow>().Where(e => e.DraftId == draft.Row.Id && e.UndoneAt != null).OrderBy(e => e.Number).FirstOrDefaultAsync(stop);
            if (first is null) return GuideRefusals.NothingToUndo;
            first.UndoneAt = null;
            return draft.Row;
        }, stop);

    /// <summary>Says whether the next version is to carry counts of determined plants.</summary>
    public Task<Outcome<GuideDraftRow>> LearnAsync(Actor actor, string guideId, long shownRevision, bool learns, CancellationToken stop) =>
        TurnAsync(actor, guideId, shownRevision, (_, draft) =>
        {
            draft.Row.Learns = learns;
            return Task.FromResult<Outcome<GuideDraftRow>>(draft.Row);
        }, stop);

    /// <summary>Makes the same changes to another published version. Changes of what that version does not have stay in the list and do nothing.</summary>
    public Task<Outcome<GuideDraftRow>> CarryOverAsync(Actor actor, string guideId, long shownRevision, string version, CancellationToken stop) =>
        TurnAsync(actor, guideId, shownRevision, async (_, draft) =>
        {
            if (!(await shelf.FindAsWrittenAsync(guideId, version, stop)).TryGet(out var other, out var gone)) return gone;
            draft.Row.BaseVersion = other.Guide.Version;
            return draft.Row;
        }, stop);

    private async Task<Outcome<GuideDraftRow>> TurnAsync(
        Actor actor, string guideId, long shownRevision, Func<LibraryDbContext, DraftInHand, Task<Outcome<GuideDraftRow>>> change, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        if (draft.Row.Revision != shownRevision) return GuideRefusals.ChangedMeanwhile;
        var outcome = await change(db, draft);
        if (!outcome.IsAllowed || !db.ChangeTracker.HasChanges()) return outcome;
        draft.Row.ChangedAt = clock.GetUtcNow();
        draft.Row.ChangedById = actor.UserId;
        // Also where the clock stood still, the revision has to rise with the change.
        db.Entry(draft.Row).State = EntityState.Modified;
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return GuideRefusals.ChangedMeanwhile;
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            return GuideRefusals.ChangedMeanwhile;
        }
        return outcome;
    }
}
