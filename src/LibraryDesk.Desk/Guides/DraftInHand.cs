using LibraryDesk.Data.Guides;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Guides;

/// <summary>One change of a draft as it stands.</summary>
/// <param name="Applies">False where the draft was carried over to a version that does not have what it changes; it then does nothing.</param>
public sealed record DraftEdit(int Number, GuideEdit Edit, Guid? ById, DateTimeOffset At, bool Applies);

/// <summary>A draft read from the database, its changes made.</summary>
/// <param name="Edits">Changes that stand, in order.</param>
/// <param name="Undone">Changes that were undone and can be put back.</param>
/// <param name="Guide">The base with all changes, under the number it would be published by.</param>
internal sealed record DraftInHand(GuideDraftRow Row, CropGuide Base, IReadOnlyList<DraftEdit> Edits, int Undone, CropGuide Guide)
{
    public static async Task<Outcome<DraftInHand>> ReadAsync(LibraryDbContext db, GuideShelf shelf, string guideId, CancellationToken stop)
    {
        if (await db.Set<GuideDraftRow>().SingleOrDefaultAsync(d => d.GuideId == guideId, stop) is not { } row) return GuideRefusals.NoDraft;
        if (!(await shelf.FindAsWrittenAsync(guideId, row.BaseVersion, stop)).TryGet(out var basis, out var gone)) return gone;
        var rows = await db.Set<GuideEditRow>().AsNoTracking().Where(e => e.DraftId == row.Id).OrderBy(e => e.Number).ToListAsync(stop);
        var taken = await db.Set<GuideVersionRow>().Where(g => g.GuideId == guideId).Select(g => g.Version).ToListAsync(stop);
        var guide = basis.Guide;
        var edits = new List<DraftEdit>();
        foreach (var made in rows.Where(e => e.UndoneAt is null))
        {
            var edit = GuideEditText.ReadEdit(made.Json);
            var changed = edit.Apply(guide);
            guide = changed ?? guide;
            edits.Add(new DraftEdit(made.Number, edit, made.ById, made.At, changed is not null));
        }
        return new DraftInHand(row, basis.Guide, edits, rows.Count(e => e.UndoneAt is not null), guide with { Version = GuideVersion.After(row.BaseVersion, taken) });
    }
}
