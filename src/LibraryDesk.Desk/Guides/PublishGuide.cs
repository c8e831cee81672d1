using System.Text;
using LibraryDesk.Data.Guides;
using LibraryDesk.Data.Provider;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Desk.Guides;

/// <summary>
/// Publishes a draft as the version that new cases are ranked by. Only after the re-run of all determined cases, and only while that re-run still holds. Cases that
/// are there already keep their version.
/// </summary>
public sealed class PublishGuide(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, GuideShelf shelf, TimeProvider clock)
{
    /// <summary>Shortest note on what changed, in characters.</summary>
    public const int LeastNote = 10;

    /// <summary>Longest note, in characters.</summary>
    public const int LongestNote = 2000;

    /// <param name="rerunId">The re-run whose page was seen.</param>
    /// <param name="note">What changed and why; everybody can read it.</param>
    public async Task<Outcome<GuideVersionRow>> RunAsync(Actor actor, string guideId, long rerunId, string? note, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (await shelf.CurrentAsWrittenAsync(guideId, stop) is not { } current) return GuideRefusals.NotFound;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        var rerun = await db.Set<GuideRerunRow>().SingleOrDefaultAsync(r => r.Id == rerunId && r.DraftId == draft.Row.Id, stop);
        var plants = await DeterminedCases.ReadAsync(db, guideId, stop);

        if (GuideCheck.Of(draft.Guide).Count > 0) return GuideRefusals.Faulty;
        if (rerun?.ResultJson is null || rerun.Fingerprint != RerunCases.Fingerprint(draft, current.Guide, plants)) return GuideRefusals.RerunFirst;
        var learned = GuideRerun.ToPublish(draft.Guide, draft.Row.Learns, plants);
        if (GuideDifference.Between(current.Guide, learned).IsNone) return GuideRefusals.NothingChanged;
        var said = note?.Trim() ?? "";
        if (said.Length < LeastNote) return GuideRefusals.NoteMissing(LeastNote);
        if (said.Length > LongestNote) return GuideRefusals.NoteTooLong(LongestNote);

        var row = new GuideVersionRow
        {
            GuideId = guideId,
            Version = draft.Guide.Version,
            Json = Encoding.UTF8.GetString(GuideText.Write(learned)),
            PublishedAt = clock.GetUtcNow(),
            PublishedById = actor.UserId,
            Note = said,
        };
        db.Add(row);
        db.Remove(draft.Row);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return GuideRefusals.RerunFirst;
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            return GuideRefusals.RerunFirst;
        }
        return row;
    }
}
