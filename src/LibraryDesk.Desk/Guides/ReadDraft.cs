using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Editing;

namespace LibraryDesk.Desk.Guides;

/// <summary>Reads the draft of a guide, for librarians.</summary>
public sealed class ReadDraft(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    public async Task<Outcome<DraftView>> RunAsync(Actor actor, string guideId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (await shelf.CurrentAsWrittenAsync(guideId, stop) is not { } current) return GuideRefusals.NotFound;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        var ids = draft.Edits.Select(e => e.ById).Append(draft.Row.ChangedById).OfType<Guid>().Distinct().ToArray();
        var names = await db.Users.Where(user => ids.Contains(user.Id)).OrderBy(user => user.Id)
            .Select(user => new { user.Id, user.DisplayName }).ToDictionaryAsync(user => user.Id, user => user.DisplayName, stop);
        return new DraftView(
            guideId, draft.Row.BaseVersion, current.Guide.Version, draft.Row.Revision, draft.Row.Learns, draft.Guide, draft.Edits, draft.Undone,
            GuideCheck.Of(draft.Guide), names, draft.Row.ChangedAt);
    }
}
